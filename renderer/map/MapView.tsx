import type { Ref } from 'react';
import type { MapEvents, MapHandle, MapInput } from './mapTypes.ts';

export interface MapViewProps {
  readonly input: MapInput;
  readonly events: MapEvents;
  readonly ref?: Ref<MapHandle>;
}

/** The map with its tools. It fills its parent, which must have a size. */
export function MapView({ input }: MapViewProps) {
  return <section className="map" aria-label="Map of the property" data-theme={input.theme} />;
}
