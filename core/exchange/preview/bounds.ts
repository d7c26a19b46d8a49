import type { Preview, PreviewFeature } from './types.ts';

/** The smallest box around all positions, going the short way round the earth. */
export function boundsOf(features: Iterable<Pick<PreviewFeature, 'path'>>): Preview['bounds'] {
  let [south, north] = [Infinity, -Infinity];
  const lons: number[] = [];
  for (const { path } of features) {
    for (const [lon, lat] of path) {
      if (lat < south) south = lat;
      if (lat > north) north = lat;
      lons.push(lon);
    }
  }
  if (lons.length === 0) return null;
  lons.sort((a, b) => a - b);
  // The widest stretch of longitude without a position is what lies outside.
  let [west, east] = [lons[0]!, lons.at(-1)!];
  let widest = 360 - (east - west);
  for (let i = 1; i < lons.length; i++) {
    const gap = lons[i]! - lons[i - 1]!;
    if (gap <= widest) continue;
    widest = gap;
    [west, east] = [lons[i]!, lons[i - 1]!];
  }
  return [west, south, east, north];
}

/** The middle of such a box. */
export function middleOf([west, south, east, north]: NonNullable<Preview['bounds']>): readonly [number, number] {
  const lon = west <= east ? (west + east) / 2 : (west + east + 360) / 2;
  return [lon > 180 ? lon - 360 : lon, (south + north) / 2];
}
