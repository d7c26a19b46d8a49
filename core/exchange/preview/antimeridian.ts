/**
 * Lines across the 180 meridian. RFC 7946, 3.1.9: they should be cut there, so that no part crosses it. Reading joins
 * such parts again.
 */
import type { LonLat } from '../../model/things.ts';

/** The parts of a path on either side of the meridian; one where it does not cross. */
export function cutAtMeridian(path: readonly LonLat[]): LonLat[][] {
  const parts: LonLat[][] = [];
  let part: LonLat[] = [];
  for (const [i, vertex] of path.entries()) {
    const before = path[i - 1];
    if (before && crosses(before, vertex)) {
      const side = before[0] > 0 ? 180 : -180;
      const lat = latitudeAtMeridian(before, vertex);
      if (!isAt(part.at(-1), side, lat)) part.push([side, lat]);
      parts.push(part);
      part = isAt(vertex, -side, lat) ? [] : [[-side, lat]];
    }
    part.push(vertex);
  }
  parts.push(part);
  return parts.filter((piece) => piece.length > 1);
}

/** Paths that were cut at the meridian, joined again; others stay as they are. */
export function joinAtMeridian(paths: readonly (readonly LonLat[])[]): (readonly LonLat[])[] {
  const joined: (readonly LonLat[])[] = [];
  for (const path of paths) {
    const before = joined.at(-1);
    if (before && continues(before, path)) joined[joined.length - 1] = joinedPath(before, path);
    else joined.push(path);
  }
  return joined;
}

export function crosses(a: LonLat, b: LonLat): boolean {
  return Math.abs(a[0] - b[0]) > 180;
}

function continues(before: readonly LonLat[], path: readonly LonLat[]): boolean {
  const [end, start] = [before.at(-1)!, path[0]!];
  return Math.abs(end[0]) === 180 && end[0] === -start[0] && end[1] === start[1];
}

/** Without the point of the cut where the path runs straight through it. */
function joinedPath(before: readonly LonLat[], path: readonly LonLat[]): LonLat[] {
  const [previous, cut, next] = [before.at(-2), before.at(-1)!, path[1]];
  const straight = previous && next && Math.abs(latitudeAtMeridian(previous, next) - cut[1]) < 1e-8;
  return straight ? [...before.slice(0, -1), ...path.slice(1)] : [...before, ...path.slice(1)];
}

function isAt(vertex: LonLat | undefined, lon: number, lat: number): boolean {
  return vertex !== undefined && vertex[0] === lon && vertex[1] === lat;
}

/** Latitude where the segment meets the meridian, linear in degrees; the segments of a fence are short. */
function latitudeAtMeridian(a: LonLat, b: LonLat): number {
  const toMeridian = 180 - Math.abs(a[0]);
  const whole = toMeridian + 180 - Math.abs(b[0]);
  return whole === 0 ? a[1] : a[1] + ((b[1] - a[1]) * toMeridian) / whole;
}
