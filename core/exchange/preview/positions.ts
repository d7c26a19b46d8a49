import type { LonLat } from '../../model/things.ts';
import { type Message, message } from '../../words/message.ts';
import { shown } from './raw.ts';

/** Longitudes may run on past 180 once round, as some programs write lines across the meridian. */
const furthestLonDeg = 540;

/** The shore of the Dead Sea and the top of Everest, with room for an ellipsoid that lies elsewhere. */
const heightsM = { least: -600, most: 9000 } as const;

export interface Positions {
  readonly path: readonly LonLat[];
  /** Height of each position, metres; null where the file gives none. Null for all: the file gives no heights here. */
  readonly heightsM: readonly (number | null)[] | null;
}

export interface PositionReader {
  /** The positions of a coordinate list, or what is wrong with the first that is no position. */
  readonly read: (coordinates: unknown) => Positions | Message;
  /** What was met on the way. */
  readonly seen: { wrapped: boolean; swappedFits: number; unswappedFits: number };
}

/** Reads positions; `swap`: the file has latitude first. */
export function positionReader(swap: boolean): PositionReader {
  const seen = { wrapped: false, swappedFits: 0, unswappedFits: 0 };
  const readOne = (position: unknown, number: number): LonLat | Message => {
    if (!Array.isArray(position) || position.length < 2) {
      return message('exchange.piece.noPosition', { number, what: shown(position) });
    }
    const [first, second] = position as readonly unknown[];
    if (typeof first !== 'number' || typeof second !== 'number') {
      return message('exchange.piece.noNumbers', { number, first: shown(first), second: shown(second) });
    }
    if (fits(first, second)) seen.unswappedFits++;
    if (fits(second, first)) seen.swappedFits++;
    const [lon, lat] = swap ? [second, first] : [first, second];
    if (!fits(lon, lat)) {
      return message('exchange.piece.notOnEarth', { number, lon: String(lon), lat: String(lat) });
    }
    if (Math.abs(lon) > 180) seen.wrapped = true;
    return [wrapped(lon), lat];
  };
  const read = (coordinates: unknown): Positions | Message => {
    if (!Array.isArray(coordinates)) {
      return message('exchange.piece.coordinatesNoList', { what: shown(coordinates) });
    }
    const path: LonLat[] = [];
    let heights: (number | null)[] | null = null;
    for (const [i, raw] of (coordinates as unknown[]).entries()) {
      const position = readOne(raw, i + 1);
      if ('code' in position) return position;
      path.push(position);
      const heightM = heightOf((raw as unknown[])[2]);
      if (heightM === null) continue;
      heights ??= new Array<number | null>(coordinates.length).fill(null);
      heights[i] = heightM;
    }
    // Many programs write 0 where they know of no height.
    return { path, heightsM: heights?.some((heightM) => heightM !== 0 && heightM !== null) ? heights : null };
  };
  return { read, seen };
}

function heightOf(value: unknown): number | null {
  return typeof value === 'number' && value >= heightsM.least && value <= heightsM.most ? value : null;
}

function fits(lon: number, lat: number): boolean {
  return Math.abs(lon) <= furthestLonDeg && Math.abs(lat) <= 90;
}

function wrapped(lon: number): number {
  if (Math.abs(lon) <= 180) return lon;
  return lon > 0 ? lon - 360 : lon + 360;
}
