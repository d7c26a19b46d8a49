import type { LonLat } from '../../model/things.ts';
import { shown } from './raw.ts';

/** Longitudes may run on past 180 once round, as some programs write lines across the meridian. */
const furthestLonDeg = 540;

export interface PositionReader {
  /** The positions of a coordinate list, or what is wrong with the first that is no position. */
  readonly read: (coordinates: unknown) => readonly LonLat[] | string;
  /** What was met on the way. */
  readonly seen: { altitudes: boolean; wrapped: boolean; swappedFits: number; unswappedFits: number };
}

/** Reads positions; `swap`: the file has latitude first. */
export function positionReader(swap: boolean): PositionReader {
  const seen = { altitudes: false, wrapped: false, swappedFits: 0, unswappedFits: 0 };
  const readOne = (position: unknown, number: number): LonLat | string => {
    if (!Array.isArray(position) || position.length < 2) {
      return `position ${number} is ${shown(position)}, not a longitude and a latitude`;
    }
    const [first, second] = position as readonly unknown[];
    if (typeof first !== 'number' || typeof second !== 'number') {
      return `position ${number} is not made of numbers (${shown(first)}, ${shown(second)})`;
    }
    if (position.length > 2) seen.altitudes = true;
    if (fits(first, second)) seen.unswappedFits++;
    if (fits(second, first)) seen.swappedFits++;
    const [lon, lat] = swap ? [second, first] : [first, second];
    if (!fits(lon, lat)) return `position ${number} (longitude ${lon}, latitude ${lat}) is no place on earth`;
    if (Math.abs(lon) > 180) seen.wrapped = true;
    return [wrapped(lon), lat];
  };
  const read = (coordinates: unknown): readonly LonLat[] | string => {
    if (!Array.isArray(coordinates)) return `its coordinates are ${shown(coordinates)}, not a list`;
    const positions: LonLat[] = [];
    for (const [i, raw] of coordinates.entries()) {
      const position = readOne(raw, i + 1);
      if (typeof position === 'string') return position;
      positions.push(position);
    }
    return positions;
  };
  return { read, seen };
}

function fits(lon: number, lat: number): boolean {
  return Math.abs(lon) <= furthestLonDeg && Math.abs(lat) <= 90;
}

function wrapped(lon: number): number {
  if (Math.abs(lon) <= 180) return lon;
  return lon > 0 ? lon - 360 : lon + 360;
}
