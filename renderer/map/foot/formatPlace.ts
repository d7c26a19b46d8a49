import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import { fixed, type Units } from '../../../core/model/formatUnits.ts';

/** Latitude, then longitude, in degrees to about a decimetre: "41.283120° S, 174.776390° E". */
export function formatLonLat([lon, lat]: LonLat): string {
  const latitude = `${fixed(Math.abs(lat), 6)}° ${lat < 0 ? 'S' : 'N'}`;
  return `${latitude}, ${fixed(Math.abs(lon), 6)}° ${lon < 0 ? 'W' : 'E'}`;
}

/** East and north of the grid's origin, always in metres or always in feet: "120.4 m E, 33.2 m S". */
export function formatGrid([x, y]: Xy, units: Units): string {
  const [perM, unit] = units === 'imperial' ? [1 / 0.3048, 'ft'] : [1, 'm'];
  const side = (coordinateM: number, positive: string, negative: string) =>
    `${fixed(Math.abs(coordinateM) * perM, 1)} ${unit} ${coordinateM < 0 ? negative : positive}`;
  return `${side(x, 'E', 'W')}, ${side(y, 'N', 'S')}`;
}
