import type { LonLat } from '../../model/things.ts';
import { type Message, message } from '../../words/message.ts';
import { joinAtMeridian } from './antimeridian.ts';
import type { PositionReader, Positions } from './positions.ts';
import { isObject, own, shown } from './raw.ts';

/** One line, point or outline of a geometry. */
export interface Part {
  readonly shape: 'line' | 'point' | 'outline';
  readonly path: readonly LonLat[];
  readonly heightsM: Positions['heightsM'];
}

/** The parts of a geometry, and what is wrong with those that can't be used. */
export interface Parts {
  readonly parts: Part[];
  readonly faults: Message[];
}

/** RFC 7946 says that collections should not be nested; some are, a little. */
const deepestCollection = 8;

export function partsOf(geometry: unknown, reader: PositionReader, depth = 0): Parts {
  if (!isObject(geometry)) return fault(message('exchange.piece.geometryNoObject', { what: shown(geometry) }));
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
      if (depth >= deepestCollection) return fault(message('exchange.piece.nested'));
      return listed(own(geometry, 'geometries'), (inner) => partsOf(inner, reader, depth + 1));
    default:
      return fault(message('exchange.piece.geometryType', { type: shown(type) }));
  }
}

function fault(why: Message): Parts {
  return { parts: [], faults: [why] };
}

function single(shape: 'line' | 'point', positions: Positions | Message): Parts {
  if ('code' in positions) return fault(positions);
  if (shape === 'line' && hasLessThan(2, positions.path)) return fault(message('exchange.piece.noLength'));
  return { parts: [{ shape, ...positions }], faults: [] };
}

function eachPoint(positions: Positions | Message): Parts {
  if ('code' in positions) return fault(positions);
  const parts = positions.path.map((position): Part => ({ shape: 'point', path: [position], heightsM: null }));
  return { parts, faults: [] };
}

/** Pieces that were cut at the 180 meridian, as the RFC asks, become one line again. */
function lines(coordinates: unknown, reader: PositionReader): Parts {
  const { parts, faults } = listed(coordinates, (line) => single('line', reader.read(line)));
  const joined = joinAtMeridian(parts.map(({ path }) => path));
  if (joined.length === parts.length) return { parts, faults };
  return { parts: joined.map((path): Part => ({ shape: 'line', path, heightsM: null })), faults };
}

/** Every ring of a polygon, holes too: each is a fence that closes. */
function outlines(coordinates: unknown, reader: PositionReader): Parts {
  return listed(coordinates, (ring) => {
    const positions = reader.read(ring);
    if ('code' in positions) return fault(positions);
    const { path, heightsM } = positions;
    if (hasLessThan(3, path)) return fault(message('exchange.piece.outlineTooFew'));
    const closed = same(path[0]!, path.at(-1)!);
    const part: Part = closed
      ? { shape: 'outline', path, heightsM }
      : { shape: 'outline', path: [...path, path[0]!], heightsM: heightsM && [...heightsM, heightsM[0]!] };
    return { parts: [part], faults: [] };
  });
}

function listed(values: unknown, read: (value: unknown) => Parts): Parts {
  if (!Array.isArray(values)) return fault(message('exchange.piece.noList', { what: shown(values) }));
  const all: Parts = { parts: [], faults: [] };
  for (const value of values) {
    const { parts, faults } = read(value);
    for (const part of parts) all.parts.push(part);
    for (const why of faults) all.faults.push(why);
  }
  return all;
}

/** Whether a path has fewer than `count` (2 or 3) different positions. */
function hasLessThan(count: 2 | 3, path: readonly LonLat[]): boolean {
  const first = path[0];
  const second = first && path.find((position) => !same(position, first));
  if (!second || count === 2) return !second;
  return path.every((position) => same(position, first) || same(position, second));
}

function same(a: LonLat, b: LonLat): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
