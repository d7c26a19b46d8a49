import type { LonLat } from '../model/things.ts';
import { fixed } from '../words/numbers/write.ts';

/** "43.512340° S, 172.401200° E": six decimals, about 0.1 m. */
export function placeText([lon, lat]: LonLat): string {
  return `${latitudeText(lat)}, ${longitudeText(lon)}`;
}

export function latitudeText(lat: number): string {
  return `${fixed(Math.abs(lat), 6)}°\u00a0${lat < 0 ? 'S' : 'N'}`;
}

export function longitudeText(lon: number): string {
  return `${fixed(Math.abs(lon), 6)}°\u00a0${lon < 0 ? 'W' : 'E'}`;
}
