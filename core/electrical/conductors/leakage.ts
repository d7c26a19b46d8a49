import type { Growth } from '../../model/things.ts';
import { message } from '../../words/message.ts';
import { type Basis, commonly } from '../basis.ts';

export interface LeakageClass {
  readonly growth: Extract<Growth, string>;
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
    ohmKmPerWire: 500_000,
    basis: commonly(message('power.sources.insulatorsAlone')),
  },
  {
    growth: 'light',
    ohmKmPerWire: 50_000,
    basis: commonly(message('power.sources.lightGrowth')),
  },
  {
    growth: 'heavy',
    ohmKmPerWire: 5_000,
    basis: commonly(message('power.sources.heavyGrowth')),
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
