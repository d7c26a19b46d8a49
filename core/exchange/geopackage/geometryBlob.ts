import type { Geometry, Position } from 'geojson';

/**
 * A geometry as a GeoPackage keeps it (OGC 12-128r17, 2.1.3): "GP", version 0, flags, the reference system, then
 * well-known binary (OGC 06-103r4), little-endian throughout. Points have no envelope, all else has one.
 */

const types = {
  Point: 1,
  LineString: 2,
  Polygon: 3,
  MultiPoint: 4,
  MultiLineString: 5,
  MultiPolygon: 6,
} as const;

const wgs84 = 4326;

type Plain = Exclude<Geometry, { type: 'GeometryCollection' }>;

export function geometryBlob(geometry: Plain): Uint8Array {
  const writer = new BinaryWriter();
  writer.bytes(0x47, 0x50, 0);
  const isPoint = geometry.type === 'Point';
  // Bit 0: little-endian; bits 1 to 3: the sort of envelope, 1 for west, east, south, north.
  writer.bytes(isPoint ? 0b0001 : 0b0011);
  writer.uint32(wgs84);
  if (!isPoint) for (const value of envelopeOf(geometry)) writer.double(value);
  writeGeometry(writer, geometry);
  return writer.done();
}

/** West, east, south, north. */
export function envelopeOf(geometry: Plain): readonly [number, number, number, number] {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [lon, lat] of positionsIn(geometry.coordinates)) {
    west = Math.min(west, lon!);
    east = Math.max(east, lon!);
    south = Math.min(south, lat!);
    north = Math.max(north, lat!);
  }
  return [west, east, south, north];
}

type Nested = readonly (number | Nested)[];

function* positionsIn(nested: Nested): Generator<Position> {
  if (typeof nested[0] === 'number') yield nested as number[];
  else for (const inner of nested as readonly Nested[]) yield* positionsIn(inner);
}

function writeGeometry(writer: BinaryWriter, geometry: Plain): void {
  writer.bytes(1);
  writer.uint32(types[geometry.type]);
  const each = (type: 'Point' | 'LineString' | 'Polygon') => (coordinates: unknown) => {
    writeGeometry(writer, { type, coordinates } as Plain);
  };
  switch (geometry.type) {
    case 'Point':
      writer.position(geometry.coordinates);
      break;
    case 'LineString':
      writer.path(geometry.coordinates);
      break;
    case 'Polygon':
      writer.list(geometry.coordinates, (ring) => writer.path(ring));
      break;
    case 'MultiPoint':
      writer.list(geometry.coordinates, each('Point'));
      break;
    case 'MultiLineString':
      writer.list(geometry.coordinates, each('LineString'));
      break;
    case 'MultiPolygon':
      writer.list(geometry.coordinates, each('Polygon'));
      break;
  }
}

/** Grows as it is written to. */
class BinaryWriter {
  #buffer = new Uint8Array(256);
  #view = new DataView(this.#buffer.buffer);
  #at = 0;

  bytes(...values: readonly number[]): void {
    this.#make(values.length);
    for (const value of values) this.#buffer[this.#at++] = value;
  }

  uint32(value: number): void {
    this.#make(4);
    this.#view.setUint32(this.#at, value, true);
    this.#at += 4;
  }

  double(value: number): void {
    this.#make(8);
    this.#view.setFloat64(this.#at, value, true);
    this.#at += 8;
  }

  position([lon, lat]: Position): void {
    this.double(lon!);
    this.double(lat!);
  }

  path(positions: readonly Position[]): void {
    this.list(positions, (position) => this.position(position));
  }

  list<T>(items: readonly T[], write: (item: T) => void): void {
    this.uint32(items.length);
    for (const item of items) write(item);
  }

  done(): Uint8Array {
    return this.#buffer.slice(0, this.#at);
  }

  #make(room: number): void {
    if (this.#at + room <= this.#buffer.length) return;
    const larger = new Uint8Array(2 * (this.#buffer.length + room));
    larger.set(this.#buffer);
    this.#buffer = larger;
    this.#view = new DataView(larger.buffer);
  }
}
