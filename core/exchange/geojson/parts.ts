import type { LonLat } from '../../model/things.ts';
import { joinAtMeridian } from './antimeridian.ts';
import type { PositionReader } from './positions.ts';
import { isObject, own, shown } from './raw.ts';

/** One line, point or outline of a geometry. */
export interface Part {
  readonly shape: 'line' | 'point' | 'outline';
  readonly path: readonly LonLat[];
}

/** The parts of a geometry, and what is wrong with those that can't be used. */
export interface Parts {
  readonly parts: Part[];
  readonly faults: string[];
}

/** RFC 7946 says that collections should not be nested; some are, a little. */
const deepestCollection = 8;

export function partsOf(geometry: unknown, reader: PositionReader, depth = 0): Parts {
  if (!isObject(geometry)) return fault(`its geometry is ${shown(geometry)}, not an object`);
  const type = own(geometry, 'type');
  const coordinates = own(geometry, 'coordinates');
  switch (type) {
    case 'Point':
      return single('point', reader.read([coordinates]));
    case 'MultiPoint':
      return eachPoint(reader.read(coordinates));
    case 'LineString':
      return single('line', reader.read(coordinates));
    case 'MultiLineString':
      return lines(coordinates, reader);
    case 'Polygon':
      return outlines(coordinates, reader);
    case 'MultiPolygon':
      return listed(coordinates, (polygon) => outlines(polygon, reader));
    case 'GeometryCollection':
      if (depth >= deepestCollection) return fault('its collections are nested too deeply');
      return listed(own(geometry, 'geometries'), (inner) => partsOf(inner, reader, depth + 1));
    default:
      return fault(`its geometry is of the type ${shown(type)}, which GeoJSON does not have`);
  }
}

function fault(why: string): Parts {
  return { parts: [], faults: [why] };
}

function single(shape: 'line' | 'point', positions: readonly LonLat[] | string): Parts {
  if (typeof positions === 'string') return fault(positions);
  if (shape === 'line' && distinct(positions) < 2)
    return fault('its line has no length: it needs two different positions');
  return { parts: [{ shape, path: positions }], faults: [] };
}

function eachPoint(positions: readonly LonLat[] | string): Parts {
  if (typeof positions === 'string') return fault(positions);
  return { parts: positions.map((position) => ({ shape: 'point', path: [position] })), faults: [] };
}

/** Pieces that were cut at the 180 meridian, as the RFC asks, become one line again. */
function lines(coordinates: unknown, reader: PositionReader): Parts {
  const { parts, faults } = listed(coordinates, (line) => single('line', reader.read(line)));
  return { parts: joinAtMeridian(parts.map(({ path }) => path)).map((path) => ({ shape: 'line', path })), faults };
}

/** Every ring of a polygon, holes too: each is a fence that closes. */
function outlines(coordinates: unknown, reader: PositionReader): Parts {
  return listed(coordinates, (ring) => {
    const positions = reader.read(ring);
    if (typeof positions === 'string') return fault(positions);
    if (distinct(positions) < 3) return fault('its outline needs three different positions');
    const closed = same(positions[0]!, positions.at(-1)!) ? positions : [...positions, positions[0]!];
    return { parts: [{ shape: 'outline', path: closed }], faults: [] };
  });
}

function listed(values: unknown, read: (value: unknown) => Parts): Parts {
  if (!Array.isArray(values)) return fault(`where a list should be there is ${shown(values)}`);
  const all: Parts = { parts: [], faults: [] };
  for (const value of values) {
    const { parts, faults } = read(value);
    for (const part of parts) all.parts.push(part);
    for (const why of faults) all.faults.push(why);
  }
  return all;
}

function distinct(positions: readonly LonLat[]): number {
  return new Set(positions.map(([lon, lat]) => `${lon} ${lat}`)).size;
}

function same(a: LonLat, b: LonLat): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
