import type { Growth } from '../../model/things.ts';
import { assumption, type Basis } from '../basis.ts';

export interface LeakageClass {
  readonly growth: Extract<Growth, string>;
  readonly name: string;
  /** Resistance to earth of one kilometre of one live wire. */
  readonly ohmKmPerWire: number;
  readonly basis: Basis;
}

/**
 * How much a live wire leaks. No source gives such figures; a fence's own readings, fitted, always beat them. Set a
 * factor of ten apart because nothing finer is known, and anchored at both ends.
 */
export const leakageClasses: readonly LeakageClass[] = [
  {
    growth: 'clean',
    name: 'New and clean',
    ohmKmPerWire: 500_000,
    basis: assumption(
      'common practice, no source: insulators alone; about 100 to the kilometre at some 50 Mohm each when damp and dusty',
    ),
  },
  {
    growth: 'light',
    name: 'Light growth',
    ohmKmPerWire: 50_000,
    basis: assumption('common practice, no source: a green stem of about 1 Mohm touching every 50 m or so'),
  },
  {
    growth: 'heavy',
    name: 'Heavy growth',
    ohmKmPerWire: 5_000,
    basis: assumption(
      'common practice, no source: green growth on the wire nearly everywhere; a few kilometres load an energiser beyond its rated 500 ohm',
    ),
  },
];

/** Leakage resistance of one kilometre of fence (ohm km): each live wire leaks as much as the next. An own figure is for one wire. */
export function leakageOhmKm(growth: Growth, liveWires: number): number {
  const ohmKmPerWire =
    typeof growth === 'object'
      ? growth.leakageOhmKm
      : leakageClasses.find((leakageClass) => leakageClass.growth === growth)!.ohmKmPerWire;
  return ohmKmPerWire / liveWires;
}
