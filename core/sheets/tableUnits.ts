import type { Units } from '../model/formatUnits.ts';

/** The unit of lengths in tables and its own length. */
export function lengthUnit(units: Units): { readonly name: 'm' | 'ft'; readonly lengthM: number } {
  return units === 'imperial' ? { name: 'ft', lengthM: 0.3048 } : { name: 'm', lengthM: 1 };
}

/** The unit of areas in tables and its own area. */
export function areaUnit(units: Units): { readonly name: 'ha' | 'ac'; readonly areaM2: number } {
  return units === 'imperial' ? { name: 'ac', areaM2: 4046.8564224 } : { name: 'ha', areaM2: 10_000 };
}
