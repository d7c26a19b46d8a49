import type { MapHandle } from '../map/mapTypes.ts';

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
  setTool(tool: Parameters<MapHandle['setTool']>[0]): void {
    current?.setTool(tool);
    current?.focus();
  },
  focus(): void {
    current?.focus();
  },
};
