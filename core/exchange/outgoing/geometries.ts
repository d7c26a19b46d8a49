import type { Geometry, Position } from 'geojson';
import type { LonLat } from '../../model/things.ts';
import { crosses, cutAtMeridian } from '../preview/antimeridian.ts';
import { wound } from './rings.ts';

/** Geometries as RFC 7946 wants them: cut at the 180 meridian, rings wound by the right-hand rule. */

export function pointGeometry(at: LonLat): Geometry {
  return { type: 'Point', coordinates: position(at) };
}

/** Null for a path of fewer than two positions, which is no line. */
export function lineGeometry(path: readonly LonLat[]): Geometry | null {
  return linesGeometry([path]);
}

/** Several lines as one geometry; a single one as itself. Null where none is a line. */
export function linesGeometry(paths: readonly (readonly LonLat[])[]): Geometry | null {
  const parts = paths.flatMap((path) => cutAtMeridian(path)).map((part) => part.map(position));
  if (parts.length === 0) return null;
  return parts.length === 1
    ? { type: 'LineString', coordinates: parts[0]! }
    : { type: 'MultiLineString', coordinates: parts };
}

/** Several points as one geometry; a single one as itself. Null without any. */
export function pointsGeometry(places: readonly LonLat[]): Geometry | null {
  if (places.length === 0) return null;
  return places.length === 1 ? pointGeometry(places[0]!) : { type: 'MultiPoint', coordinates: places.map(position) };
}

/** A polygon with its holes; an area across the 180 meridian becomes one on either side. Rings need not be closed. */
export function areaGeometry(shell: readonly LonLat[], holes: readonly (readonly LonLat[])[] = []): Geometry {
  if (!ringCrosses(shell)) return { type: 'Polygon', coordinates: ringsOf(shell, holes) };
  const sides = ['east', 'west'] as const;
  const polygons = sides.flatMap((side) => {
    const outer = clipped(shell, side);
    if (outer.length < 3) return [];
    const inner = holes.map((hole) => clipped(hole, side)).filter(({ length }) => length >= 3);
    return [ringsOf(outer, inner)];
  });
  return { type: 'MultiPolygon', coordinates: polygons };
}

function ringsOf(shell: readonly LonLat[], holes: readonly (readonly LonLat[])[]): Position[][] {
  const ring = (path: readonly LonLat[], anticlockwise: boolean) => wound(closed(path), anticlockwise).map(position);
  return [ring(shell, true), ...holes.map((hole) => ring(hole, false))];
}

function closed(ring: readonly LonLat[]): readonly LonLat[] {
  const [first, last] = [ring[0]!, ring.at(-1)!];
  return first[0] === last[0] && first[1] === last[1] ? ring : [...ring, first];
}

function ringCrosses(ring: readonly LonLat[]): boolean {
  return ring.some((vertex, i) => crosses(ring.at(i - 1)!, vertex));
}

/** The part of a ring on one side of the meridian, after I. E. Sutherland and G. W. Hodgman (1974). */
function clipped(ring: readonly LonLat[], side: 'east' | 'west'): LonLat[] {
  // Longitudes laid out round the meridian: the near side of it below 180, the far side above.
  const unrolled = ring.map(([lon, lat]): LonLat => [lon < 0 ? lon + 360 : lon, lat]);
  const inside = ([lon]: LonLat) => (side === 'west' ? lon <= 180 : lon >= 180);
  const kept: LonLat[] = [];
  for (const [i, vertex] of unrolled.entries()) {
    const before = unrolled.at(i - 1)!;
    if (inside(vertex) !== inside(before)) kept.push(atMeridian(before, vertex));
    if (inside(vertex)) kept.push(vertex);
  }
  return kept.map(([lon, lat]): LonLat => [side === 'east' ? lon - 360 : lon, lat]);
}

function atMeridian(a: LonLat, b: LonLat): LonLat {
  return [180, a[1] + ((b[1] - a[1]) * (180 - a[0])) / (b[0] - a[0])];
}

function position([lon, lat]: LonLat): Position {
  return [lon, lat];
}
