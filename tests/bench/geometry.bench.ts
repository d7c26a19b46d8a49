import {
  along,
  buffer,
  featureCollection,
  lineArc,
  lineOffset,
  lineString,
  nearestPointOnLine,
  polygonize,
  simplify as turfSimplify,
} from '@turf/turf';
import Flatbush from 'flatbush';
import { stretchesWithin } from '../../core/checks/support/zones.ts';
import type { PaperPoint } from '../../core/drawing/displayList.ts';
import { seatLabels } from '../../core/drawing/labels/seats.ts';
import { arcPath } from '../../core/geometry/arc.ts';
import { boxOfSegment } from '../../core/geometry/box.ts';
import { earthAt } from '../../core/geometry/earth.ts';
import { facesOfLines } from '../../core/geometry/facesOfLines.ts';
import { pathLengthM, ringAreaM2 } from '../../core/geometry/geodesic.ts';
import { createLocalPlane } from '../../core/geometry/localPlane.ts';
import { nodeLines } from '../../core/geometry/nodeLines.ts';
import { cumulativeLengthsM, offsetPolyline } from '../../core/geometry/polyline.ts';
import { simplify } from '../../core/geometry/simplify.ts';
import { createSpatialIndex } from '../../core/geometry/spatialIndex.ts';
import { trilaterate } from '../../core/geometry/trilaterate.ts';
import type { LonLat, Xy } from '../../core/geometry/types.ts';
import { lonLatAt, measured, nearestOn } from '../../core/shapes/measuredPath.ts';
import { trenchUnder } from '../../core/shapes/trench.ts';
import { measure } from './measure.ts';
import type { BenchRow } from './row.ts';

export async function bench(): Promise<BenchRow[]> {
  return [
    ...[11, 38, 49].map(faces),
    paddockAreas(),
    lengths(),
    ...besideTurf(),
    toPlane(),
    editAndSnap(),
    labels(),
    thinTrack(),
    thinToAndFro(),
    threeTies(),
  ];
}

/** A mesh of side x side paddocks between five-segment lines. */
function faces(side: number): BenchRow {
  const lines = mesh(side);
  const { nodes, edges } = nodeLines(lines, 0.3);
  const cut = featureCollection(edges.map(({ from, to }) => lineString([[...nodes[from]!], [...nodes[to]!]])));
  return {
    name: `paddocks of a drawing: ${lines.length} lines, ${side * side} paddocks`,
    size: lines.length,
    ...measure(() => facesOfLines(lines), lines.length > 1000 ? 12 : 40),
    unit: 'ms',
    budget: lines.length <= 300 ? 20 : null,
    other: {
      name: '@turf/polygonize, its lines cut beforehand and not timed',
      median: measure(() => polygonize(cut), 8).median,
    },
  };
}

function paddockAreas(): BenchRow {
  const plane = createLocalPlane([175.3, -37.9]);
  const rings = facesOfLines(mesh(10)).map(({ shell }) => shell.map(plane.toLonLat));
  return {
    name: 'geodesic areas of 100 paddocks',
    size: rings.length,
    ...measure(() => rings.map(ringAreaM2)),
    unit: 'ms',
    budget: null,
  };
}

function lengths(): BenchRow {
  const path = Array.from({ length: 20_001 }, (_, i): LonLat => [175 + i * 1e-5, -38 + Math.sin(i) * 1e-4]);
  const earth = earthAt([175.1, -38]);
  return {
    name: 'lengths of 20,000 segments by Turf on the Gauss sphere',
    size: 20_000,
    ...measure(() => earth.pathLengthM(path), 12),
    unit: 'ms',
    budget: null,
    other: { name: 'GeographicLib', median: measure(() => pathLengthM(path), 12).median },
  };
}

/** A fence of 200 segments, in degrees and in the plane, and the places that are asked for. */
function fence() {
  const plane = createLocalPlane([175.3, -37.9]);
  const random = generator(5);
  const xy = Array.from({ length: 201 }, (_, i): Xy => [i * 10, 40 * Math.sin(i / 9) + 3 * random()]);
  const whole = measured(plane, xy.map(plane.toLonLat));
  const stations = Array.from({ length: 1000 }, () => random() * whole.lengthM);
  const points = stations.map((x): Xy => [x, 100 * random() - 50]);
  return { plane, xy, whole, stations, points };
}

/** The plane's metres as degrees, for functions of Turf that take coordinates as they come. */
const asGiven = (path: readonly Xy[]) => path.map(([x, y]) => [x, y]);
/** The plane's metres as degrees of their size, for functions of Turf that measure. */
const metresPerDegree = 111_195.08;
const asDegrees = (path: readonly Xy[]) => path.map(([x, y]) => [x / metresPerDegree, y / metresPerDegree]);

function beside(
  name: string,
  size: number,
  ours: () => unknown,
  turfs: string,
  turf: () => unknown,
  runs = 12,
): BenchRow {
  const other = { name: `Turf: ${turfs}`, median: measure(turf, runs).median };
  return { name, size, ...measure(ours, runs), unit: 'ms', budget: null, other };
}

/** What Turf does too, beside what is done in its place, each on the same task. */
function besideTurf(): BenchRow[] {
  const { plane, xy, whole, stations, points } = fence();
  const { earth } = plane;
  const line = lineString(asDegrees(xy));
  const flat = lineString(asGiven(xy));
  const random = generator(11);
  const track = Array.from({ length: 20_000 }, (_, i): Xy => [i, 200 * Math.sin(i / 500) + random()]);
  const trackLine = lineString(asGiven(track));
  const way = xy.map(([x, y]): Xy => [x, y + 12 * Math.sin(x / 300)]);
  const wayLine = lineString(asDegrees(way));
  const inPlane = { xy, stationsM: cumulativeLengthsM(xy) };
  const openings = Array.from({ length: 200 }, (_, i) => {
    const startPostAt = lonLatAt(whole, i * 9);
    const endPostAt = lonLatAt(whole, i * 9 + 4);
    return { plane, startPostAt, endPostAt, startPost: plane.toXy(startPostAt), endPost: plane.toXy(endPostAt) };
  });
  const byHand = () => openings.map(({ startPost, endPost }) => arcPath(startPost, endPost, 0.6));
  return [
    beside(
      '1,000 places along a line of 200 segments, its stations kept',
      1000,
      () => stations.map((atM) => earth.along(whole.path.slice(0, 2), atM % 10)),
      'along, adding up from the start each time',
      () => stations.map((atM) => along(line, atM, { units: 'meters' })),
    ),
    beside(
      '1,000 nearest places on a line of 200 segments',
      1000,
      () => points.map((at) => nearestOn(whole, at)),
      'nearestPointOnLine',
      () => points.map((at) => nearestPointOnLine(line, asDegrees([at])[0]!)),
      3,
    ),
    beside(
      'a track of 20,000 points simplified to 1 m',
      track.length,
      () => simplify(track, 1),
      'simplify, highQuality',
      () => turfSimplify(trackLine, { tolerance: 1, highQuality: true }),
      6,
    ),
    beside(
      'a line beside a line of 200 segments, 100 times',
      200,
      () => times(100, () => offsetPolyline(xy, 3)),
      'lineOffset',
      () => times(100, () => lineOffset(flat, 3, { units: 'degrees' })),
    ),
    beside(
      '200 trenches as arcs in the plane',
      200,
      byHand,
      'set out on the earth, and into the plane (`trenchUnder`)',
      () => openings.map((opening) => trenchUnder(opening, 0.6)),
    ),
    beside('200 arcs in the plane', 200, byHand, 'lineArc alone', () =>
      times(200, () => lineArc([0, 0], 4, 300, 60, { units: 'meters', steps: 8 })),
    ),
    beside(
      'stretches of a fence within 8 m of a way, 200 segments each',
      200,
      () => stretchesWithin({ ...inPlane }, way, 8),
      'buffer alone',
      () => buffer(wayLine, 8, { units: 'meters', steps: 64 }),
    ),
  ];
}

function times(count: number, run: () => unknown): void {
  for (let i = 0; i < count; i++) run();
}

function toPlane(): BenchRow {
  const plane = createLocalPlane([175.3, -37.9]);
  const places = Array.from({ length: 20_000 }, (_, i): LonLat => [175 + i * 3e-5, -38 + Math.sin(i) * 0.1]);
  return {
    name: '20,000 vertices into the working plane and back',
    size: places.length,
    ...measure(() => places.map(plane.toXy).map(plane.toLonLat), 12),
    unit: 'ms',
    budget: null,
  };
}

/** One line of 20,000 segments moves, then the pointer asks what is near. */
function editAndSnap(): BenchRow {
  const paths = mesh(44).map((path, key): [number, Xy[]] => [key, path]);
  const index = createSpatialIndex(paths);
  const segments = paths.flatMap(([, path]) => path.slice(1).map((end, i) => boxOfSegment(path[i]!, end)));
  let round = 0;
  const edit = () => {
    const [key, path] = paths[round++ % paths.length]!;
    index.set(key, path);
    return index.nearest([round % 8000, 4000], 10);
  };
  const packAgain = () => {
    const tree = new Flatbush(segments.length);
    for (const box of segments) tree.add(...box);
    tree.finish();
    return tree.search(3990, 3990, 4010, 4010);
  };
  return {
    name: 'one edit and one snap among 20,000 segments',
    size: segments.length,
    ...measure(edit, 1000),
    unit: 'ms',
    budget: 2,
    other: { name: 'Flatbush packed anew', median: measure(packAgain).median },
  };
}

function labels(): BenchRow {
  const random = generator(7);
  const requests = Array.from({ length: 2000 }, (_, id) => ({
    id,
    anchor: [random() * 1440, random() * 900] as Xy,
    width: 40,
    height: 12,
    places: spotsAround(40, 12, 4),
    priority: id % 3,
  }));
  const field = {
    frame: null,
    signs: [],
    lines: [],
    shapeOf: ([dx, dy]: PaperPoint, { anchor: [x, y] }: (typeof requests)[number]) =>
      ({ box: [x + dx - 20, y + dy - 6, x + dx + 20, y + dy + 6], quads: null }) as const,
  };
  return {
    name: 'labels of a crowded screen',
    size: requests.length,
    ...measure(() => seatLabels(requests, field)),
    unit: 'ms',
    budget: 50,
  };
}

/** The eight places around a point. */
function spotsAround(width: number, height: number, gap: number): PaperPoint[] {
  const [dx, dy] = [width / 2 + gap, height / 2 + gap];
  const steps = [-1, 0, 1];
  return steps.flatMap((x) => steps.map((y): PaperPoint => [x * dx, y * dy])).filter(([x, y]) => x !== 0 || y !== 0);
}

function thinTrack(): BenchRow {
  const random = generator(8);
  const track = Array.from({ length: 100_000 }, (_, i): Xy => [i, 200 * Math.sin(i / 500) + random()]);
  return {
    name: 'a track of 100,000 points simplified to 1 m',
    size: track.length,
    ...measure(() => simplify(track, 1), 12),
    unit: 'ms',
    budget: null,
  };
}

/** The sort that makes Douglas and Peucker's way look at every vertex again for each one that it keeps. */
function thinToAndFro(): BenchRow {
  const track = Array.from({ length: 200_000 }, (_, i): Xy => [i / 100, (i % 2 === 0 ? 1 : -1) * (20 + i / 200_000)]);
  return {
    name: 'a track of 200,000 points to and fro simplified to 2 m',
    size: track.length,
    ...measure(() => simplify(track, 2), 5),
    unit: 'ms',
    budget: 3000,
  };
}

function threeTies(): BenchRow {
  const ties = [
    { post: [0, 0] as Xy, distanceM: 3.91, seM: 0.01 },
    { post: [6, 0] as Xy, distanceM: 3.9, seM: 0.01 },
    { post: [2, 7] as Xy, distanceM: 4.61, seM: 0.01 },
  ];
  return { name: 'a point from three ties', size: 3, ...measure(() => trilaterate(ties), 200), unit: 'ms', budget: 5 };
}

function mesh(side: number): Xy[][] {
  const random = generator(1);
  const post = (i: number, j: number): Xy => [i * 200 + 20 * random(), j * 200 + 20 * random()];
  const posts = Array.from({ length: side + 1 }, (_, i) => Array.from({ length: side + 1 }, (_, j) => post(i, j)));
  const fence = ([ax, ay]: Xy, [bx, by]: Xy): Xy[] =>
    Array.from({ length: 6 }, (_, k): Xy => {
      const stray = k % 5 === 0 ? 0 : 5;
      return [ax + ((bx - ax) * k) / 5 + stray * random(), ay + ((by - ay) * k) / 5 + stray * random()];
    });
  return posts.flatMap((column, i) =>
    column.flatMap((at, j) => {
      const [east, north] = [posts[i + 1]?.[j], column[j + 1]];
      return [...(east ? [fence(at, east)] : []), ...(north ? [fence(at, north)] : [])];
    }),
  );
}

/** A small seeded generator of numbers from 0 to 1. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
