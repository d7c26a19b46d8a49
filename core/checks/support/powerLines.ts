import type { Service } from '../../model/things.ts';
import type { CheckContext } from './context.ts';
import type { ServiceShape } from './services.ts';
import type { Wire } from './wireIndex.ts';

/** Clearance and zone by voltage, IEC 60335-2-76 Annex BB, BB.1 (paraphrased). */
export function powerLineLimits(voltageV: number): { readonly clearanceM: number; readonly zoneM: number } {
  if (voltageV <= 1000) return { clearanceM: 3, zoneM: 2 };
  return { clearanceM: voltageV <= 33_000 ? 4 : widestClearanceM, zoneM: widestZoneM };
}

/** The widest zone, and the widest clearance, that any voltage asks for. */
export const widestZoneM = 15;
export const widestClearanceM = 8;

/** Height of wires and leads within the zone, the same source. */
export const mostHeightM = 3;

export function overheadPowerLines({ services }: CheckContext): ServiceShape[] {
  return services.filter(({ service }) => isOverheadPowerLine(service));
}

function isOverheadPowerLine({ what, buried }: Service): boolean {
  return what === 'powerLine' && !buried;
}

/** Live wires that come within `zoneM` of a power line's drawn path. */
export function wiresUnder({ wires }: CheckContext, { xy }: ServiceShape, zoneM: number): Wire[] {
  return wires.nearPath(xy, zoneM);
}
