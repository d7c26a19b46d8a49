/**
 * Says where a value breaks RFC 7946, read from the RFC alone and sharing nothing with the exporter: types and their
 * coordinates (3.1), rings closed and wound by the right-hand rule (3.1.6), nothing across the 180 meridian (3.1.9),
 * features with their members (3.2, 3.3), no `crs` (4). Null where it is sound.
 */
export function brokenRule(value: unknown): string | null {
  const collection = value as { type?: unknown; features?: unknown; crs?: unknown };
  if (collection?.type !== 'FeatureCollection') return 'not a FeatureCollection';
  if (collection.crs !== undefined) return 'has a crs';
  if (!Array.isArray(collection.features)) return 'no list of features';
  for (const [i, feature] of collection.features.entries()) {
    const broken = brokenFeature(feature);
    if (broken) return `feature ${i}: ${broken}`;
  }
  return null;
}

function brokenFeature(value: unknown): string | null {
  const feature = value as { type?: unknown; id?: unknown; properties?: unknown; geometry?: unknown };
  if (feature.type !== 'Feature') return 'not a Feature';
  if (!['string', 'number', 'undefined'].includes(typeof feature.id)) return 'id is neither text nor number';
  if (typeof feature.properties !== 'object') return 'properties are neither an object nor null';
  if (feature.geometry === undefined) return 'no geometry member';
  return feature.geometry === null ? null : brokenGeometry(feature.geometry);
}

function brokenGeometry(value: unknown): string | null {
  const { type, coordinates } = value as { type: string; coordinates: unknown };
  const each = (list: unknown, check: (item: unknown) => string | null): string | null => {
    if (!Array.isArray(list)) return 'coordinates are no list';
    for (const item of list) {
      const broken = check(item);
      if (broken) return broken;
    }
    return null;
  };
  switch (type) {
    case 'Point':
      return brokenPosition(coordinates);
    case 'LineString':
      return brokenLine(coordinates);
    case 'MultiLineString':
      return each(coordinates, brokenLine);
    case 'Polygon':
      return brokenPolygon(coordinates);
    case 'MultiPolygon':
      return each(coordinates, brokenPolygon);
    default:
      return `geometry of type ${type}`;
  }
}

function brokenPosition(value: unknown): string | null {
  if (!Array.isArray(value) || value.length < 2 || value.length > 3) return 'position of a wrong length';
  const [lon, lat] = value as number[];
  if (!value.every(Number.isFinite)) return 'position that is not of numbers';
  return Math.abs(lon!) <= 180 && Math.abs(lat!) <= 90 ? null : `position out of range: ${lon}, ${lat}`;
}

function brokenLine(value: unknown): string | null {
  if (!Array.isArray(value) || value.length < 2) return 'line of fewer than two positions';
  for (const [i, position] of (value as number[][]).entries()) {
    const broken = brokenPosition(position);
    if (broken) return broken;
    const before = (value as number[][])[i - 1];
    if (before && Math.abs(before[0]! - position[0]!) > 180) return 'line across the 180 meridian';
  }
  return null;
}

function brokenPolygon(value: unknown): string | null {
  if (!Array.isArray(value)) return 'polygon without rings';
  for (const [i, ring] of (value as number[][][]).entries()) {
    const broken = brokenLine(ring);
    if (broken) return broken;
    if (ring.length < 4) return 'ring of fewer than four positions';
    if (ring[0]![0] !== ring.at(-1)![0] || ring[0]![1] !== ring.at(-1)![1]) return 'ring that is not closed';
    if (shoelace(ring) > 0 !== (i === 0)) return 'ring wound the wrong way';
  }
  return null;
}

/** Twice the signed area in degrees, about the first vertex. */
function shoelace(ring: readonly number[][]): number {
  const [x0, y0] = ring[0] as [number, number];
  return ring.reduce((sum, [x, y], i) => {
    const [px, py] = ring[Math.max(0, i - 1)] as [number, number];
    return sum + (px - x0) * (y! - y0) - (x! - x0) * (py - y0);
  }, 0);
}
