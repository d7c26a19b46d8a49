import type { LonLat, Xy } from '../geometry/types.ts';
import { lengthUnit } from '../words/numbers/units.ts';
import { fixed, type Units } from '../words/numbers/write.ts';
import type { Figures } from '../words/types.ts';
import { formatDegrees, formatDegreesMinutes } from './degrees.ts';
import { projectionOf } from './projection.ts';
import type { CoordinateSystem } from './systems.ts';
import { utmDefinition, utmZoneAt } from './utm.ts';

/** A place in a coordinate system; in degrees where the system can't show it. */
export function formatPlace(lonLat: LonLat, system: CoordinateSystem, f: Figures): string {
  if (system.kind === 'degrees') {
    return system.style === 'minutes' ? formatDegreesMinutes(lonLat) : formatDegrees(lonLat);
  }
  const utm = system.kind === 'utm' ? utmZoneAt(lonLat) : null;
  const { projection } = projectionOf(utm ? utmDefinition(utm) : (system as { definition: string }).definition);
  const [east, north] = projection?.toGrid(lonLat) ?? [Number.NaN, Number.NaN];
  if (!projection || !Number.isFinite(east) || !Number.isFinite(north)) return formatDegrees(lonLat);
  if (projection.isDegrees) return `${fixed(north, 6)}, ${fixed(east, 6)}`;
  const place = `${fixed(east, 1)} E, ${fixed(north, 1)} N`;
  return utm ? f.words.coordinates.inZone({ place, zone: utm }) : place;
}

/** East and north of the blank grid's origin, always in metres or always in feet: "120.4 m E, 33.2 m S". */
export function formatGrid([x, y]: Xy, units: Units): string {
  const unit = lengthUnit(units);
  const side = (coordinateM: number, positive: string, negative: string) =>
    `${fixed(Math.abs(coordinateM) / unit.lengthM, 1)} ${unit.name} ${isBelow(coordinateM / unit.lengthM, 1) ? negative : positive}`;
  return `${side(x, 'E', 'W')}, ${side(y, 'N', 'S')}`;
}

/** Whether a figure is less than nothing as it is shown. */
function isBelow(value: number, decimals: number): boolean {
  return Number(value.toFixed(decimals)) < 0;
}
