import { fixed, type Units } from '../../../core/model/formatUnits.ts';

/** A height above the sea in the property's units, to the metre or foot: 644 m, 2,114 ft. */
export function heightText(heightM: number, units: Units): string {
  return units === 'imperial' ? `${fixed(heightM / 0.3048, 0)} ft` : `${fixed(heightM, 0)} m`;
}
