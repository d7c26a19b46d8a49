import type { LonLat } from '../../core/model/things.ts';
import type { MapExtent, MapHandle } from '../map/mapTypes.ts';

let current: MapHandle | null = null;

/** The map of this window, for commands; calls are passed over while there is none. */
export const mapView = {
  attach(handle: MapHandle | null): void {
    current = handle;
  },
  fit(): void {
    current?.fit();
  },
  zoomTo(id: string): void {
    current?.zoomTo(id);
  },
  goTo(lonLat: LonLat): void {
    current?.goTo(lonLat);
  },
  askForPlace(): void {
    current?.askForPlace();
  },
  extent(): MapExtent {
    return current?.extent() ?? { centre: [0, 0], widthM: 600, heightM: 400 };
  },
  setTool(tool: Parameters<MapHandle['setTool']>[0]): void {
    current?.setTool(tool);
    current?.focus();
  },
  focus(): void {
    current?.focus();
  },
};
