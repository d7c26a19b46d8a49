import type { LonLat } from '../../model/things.ts';

/**
 * A place as a `geo:` URI (RFC 5870): latitude, then longitude, WGS 84, decimal degrees. Seven decimals are about a
 * centimetre. No `u` is given: how well a property lies on earth is not known to the file.
 */
export function geoUri([lon, lat]: LonLat): string {
  return `geo:${plain(lat)},${plain(lon)}`;
}

/** RFC 5870 has neither exponents nor a need for trailing zeros. */
function plain(degrees: number): string {
  const text = degrees.toFixed(7).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}
