import proj4 from 'proj4';
import type { LonLat, Xy } from '../geometry/types.ts';
import { type Message, message } from '../words/message.ts';

/** A plane coordinate system of the earth: metres (or its own unit) east and north. */
export interface Projection {
  /** NaN where the place is outside what the projection can show. */
  readonly toGrid: (lonLat: LonLat) => Xy;
  readonly toLonLat: (grid: Xy) => LonLat;
  /** Coordinates are degrees of longitude and latitude rather than metres. */
  readonly isDegrees: boolean;
}

export type ProjectionOrProblem =
  | { readonly projection: Projection; readonly problem: null }
  | { readonly projection: null; readonly problem: Message };

const wgs84 = '+proj=longlat +datum=WGS84 +no_defs';
const longestDefinition = 2000;
const kept = new Map<string, ProjectionOrProblem>();

/**
 * The projection that a PROJ text describes ("+proj=tmerc +lat_0=0 ..."), by proj4. WGS 84, NZGD2000, GDA2020, IRENET95
 * and ETRS89 are taken as one datum, as far as the text names no shift of its own; they differ by less than about a
 * metre, and by much less where they were last fitted to one another.
 */
export function projectionOf(definition: string): ProjectionOrProblem {
  let found = kept.get(definition);
  if (!found) {
    found = makeProjection(definition.trim());
    if (kept.size > 64) kept.clear();
    kept.set(definition, found);
  }
  return found;
}

function makeProjection(definition: string): ProjectionOrProblem {
  const problem = whyNotDefinition(definition);
  if (problem) return { projection: null, problem };
  try {
    const converter = proj4(wgs84, definition);
    const isDegrees = /\+proj=(longlat|latlong|lonlat|latlon)\b/.test(definition);
    const projection: Projection = {
      toGrid: (lonLat) => pair(() => converter.forward([...lonLat])),
      toLonLat: (grid) => pair(() => converter.inverse([...grid])),
      isDegrees,
    };
    return provesItself(projection)
      ? { projection, problem: null }
      : { projection: null, problem: message('coordinates.definition.notUsable') };
  } catch {
    return { projection: null, problem: message('coordinates.definition.notUsable') };
  }
}

function whyNotDefinition(definition: string): Message | null {
  if (definition.length > longestDefinition) return message('coordinates.definition.tooLong');
  if (!/^\+proj=[a-z0-9_]+(\s|$)/i.test(definition) || !/^(\+[a-z0-9_]+(=[^\s+]\S*)?\s*)+$/i.test(definition)) {
    return message('coordinates.definition.notProj');
  }
  if (/\+proj=(geocent|cart)\b/.test(definition)) {
    return message('coordinates.definition.geocentric');
  }
  if (/\+nadgrids=(?!@null)/.test(definition)) {
    return message('coordinates.definition.gridFile');
  }
  return null;
}

function pair(convert: () => number[]): Xy {
  try {
    const [x = Number.NaN, y = Number.NaN] = convert();
    return [x, y];
  } catch {
    return [Number.NaN, Number.NaN];
  }
}

/** Somewhere on earth the way there and back must come home, or the definition is of no use. */
function provesItself({ toGrid, toLonLat }: Projection): boolean {
  for (let lat = -85; lat <= 85; lat += 17) {
    for (let lon = -175; lon <= 175; lon += 14) {
      const [backLon, backLat] = toLonLat(toGrid([lon, lat]));
      if (Math.abs(backLon - lon) < 1e-6 && Math.abs(backLat - lat) < 1e-6) return true;
    }
  }
  return false;
}
