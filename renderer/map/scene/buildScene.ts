import Flatbush from 'flatbush';
import type { LocalPlane } from '../../../core/geometry/localPlane.ts';
import { type Box, boxAround } from '../../../core/geometry/plane/box.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import type { Project } from '../../../core/model/project.ts';
import type { LonLat } from '../../../core/model/things.ts';
import type { GatewayShape, LineShape, Survey } from '../../../core/registers/types.ts';
import { type MapId, paddockMapId } from '../mapTypes.ts';
import { sliceOfLine } from '../plane/stations.ts';
import type { Part } from './parts.ts';
import { switchInto } from './switchInto.ts';

/** Everything the map draws, with an index by place and one by id. Made anew after each edit; what did not change is reused. */
export interface Scene {
  readonly project: Project;
  readonly survey: Survey;
  readonly plane: LocalPlane;
  readonly parts: readonly Part[];
  readonly partsOf: ReadonlyMap<MapId, readonly Part[]>;
  /** Parts whose boxes meet `box`. */
  readonly search: (box: Box) => Part[];
  /** Around everything that is drawn; null where nothing is. */
  readonly extent: Box | null;
  /** Any energiser at all: without one, no line is called dead. */
  readonly hasSource: boolean;
}

export function buildScene(project: Project, survey: Survey, plane: LocalPlane): Scene {
  const parts = [...partsFrom(project, survey, plane)].filter(({ box }) => box.every(Number.isFinite));
  const partsOf = new Map<MapId, Part[]>();
  for (const part of parts) {
    const known = partsOf.get(part.id);
    if (known) known.push(part);
    else partsOf.set(part.id, [part]);
  }
  return {
    project,
    survey,
    plane,
    parts,
    partsOf,
    search: searcher(parts),
    extent: extentOf(parts),
    hasSource: project.energiser.size > 0,
  };
}

/** In the order in which they are drawn within a kind. */
function* partsFrom(project: Project, survey: Survey, plane: LocalPlane): Generator<Part> {
  yield* fixedParts(project, plane);
  yield* paddockParts(survey);
  yield* lineParts(survey);
  yield* signParts(project, survey, plane);
}

function searcher(parts: readonly Part[]): (box: Box) => Part[] {
  if (parts.length === 0) return () => [];
  const index = new Flatbush(parts.length);
  for (const { box } of parts) index.add(box[0], box[1], box[2], box[3]);
  index.finish();
  return (box) => index.search(box[0], box[1], box[2], box[3]).map((i) => parts[i]!);
}

function extentOf(parts: readonly Part[]): Box | null {
  return boxAround(
    parts.flatMap(({ box }): Xy[] => [
      [box[0], box[1]],
      [box[2], box[3]],
    ]),
  );
}

function* lineParts(survey: Survey): Generator<Part> {
  const withRuns = new Set<string>();
  for (const [edge, run] of survey.network.edges.entries()) {
    if (run.kind !== 'run') continue;
    const shape = survey.lines.get(run.lineId);
    if (!shape) continue;
    withRuns.add(run.lineId);
    yield piece(shape, run.fromM, run.toM, edge);
  }
  const gateways = gatewaysByLine(survey);
  for (const [lineId, shape] of survey.lines) {
    if (withRuns.has(lineId) || shape.xy.length < 2) continue;
    for (const [fromM, toM] of stretchesBetween(gateways.get(lineId) ?? [], shape.lengthM)) {
      yield piece(shape, fromM, toM, -1);
    }
  }
}

function* signParts(project: Project, survey: Survey, plane: LocalPlane): Generator<Part> {
  const crossingEdges = new Map<string, number>();
  for (const [edge, crossing] of survey.network.edges.entries()) {
    if (crossing.kind === 'crossing') crossingEdges.set(crossing.gatewayId, edge);
  }
  for (const shape of survey.gateways.values()) {
    const { id, widthM } = shape.gateway;
    // A leaf reaches out of the opening by its own width.
    yield { kind: 'gateway', id, shape, box: boxAt(shape.centre, widthM * 1.2) };
    const figures = survey.crossings.get(id);
    if (!figures) continue;
    const box = boxOf(figures.path) ?? boxAt(shape.centre, widthM);
    yield { kind: 'crossing', id: figures.crossing.id, figures, shape, edge: crossingEdges.get(id) ?? -1, box };
  }
  const leadOutPath = (id: string) => planePath(plane, project.leadOut.get(id)?.path ?? []);
  for (const row of survey.switches) {
    const into = switchInto(survey, leadOutPath, row.switch.place);
    yield { kind: 'switch', id: row.switch.id, row, into, box: boxAt(row.xy, 0) };
  }
}

function* paddockParts(survey: Survey): Generator<Part> {
  for (const paddock of survey.paddocks) {
    const box = boxOf(paddock.ring);
    if (box) yield { kind: 'paddock', id: paddockMapId(paddock), paddock, box };
  }
}

/** Things whose places the survey does not hold in the plane. */
function* fixedParts(project: Project, plane: LocalPlane): Generator<Part> {
  for (const service of project.service.values()) {
    const xy = planePath(plane, service.path);
    const box = boxOf(xy);
    if (box) yield { kind: 'service', id: service.id, service, xy, box };
  }
  for (const leadOut of project.leadOut.values()) {
    const xy = planePath(plane, leadOut.path);
    const box = boxOf(xy);
    if (box) yield { kind: 'leadOut', id: leadOut.id, leadOut, xy, box };
  }
  for (const earthField of project.earthField.values()) {
    const xy = planePoint(plane, earthField.at);
    yield { kind: 'earthField', id: earthField.id, earthField, xy, box: boxAt(xy, 0) };
  }
  for (const post of project.post.values()) {
    const xy = planePoint(plane, post.at);
    yield { kind: 'post', id: post.id, post, xy, box: boxAt(xy, 0) };
  }
  for (const energiser of project.energiser.values()) {
    const xy = planePoint(plane, energiser.at);
    yield { kind: 'energiser', id: energiser.id, energiser, xy, box: boxAt(xy, 0) };
  }
}

interface Slice {
  readonly xy: readonly Xy[];
  readonly box: Box;
}

const slices = new WeakMap<LineShape, Map<string, Slice>>();

function piece(shape: LineShape, fromM: number, toM: number, edge: number): Part {
  let ofLine = slices.get(shape);
  if (!ofLine) {
    ofLine = new Map();
    slices.set(shape, ofLine);
  }
  const key = `${fromM}:${toM}`;
  let slice = ofLine.get(key);
  if (!slice) {
    const xy = sliceOfLine(shape, fromM, toM);
    slice = { xy, box: boxOf(xy) ?? nowhere };
    ofLine.set(key, slice);
  }
  return { kind: 'piece', id: shape.line.id, shape, fromM, toM, edge, xy: slice.xy, box: slice.box };
}

function gatewaysByLine(survey: Survey): Map<string, GatewayShape[]> {
  const byLine = new Map<string, GatewayShape[]>();
  for (const shape of survey.gateways.values()) {
    const known = byLine.get(shape.gateway.lineId);
    if (known) known.push(shape);
    else byLine.set(shape.gateway.lineId, [shape]);
  }
  return byLine;
}

/** What is left of a line of this length between its openings, as pairs of stations. */
export function stretchesBetween(
  openings: readonly { readonly fromM: number; readonly toM: number }[],
  lengthM: number,
): (readonly [fromM: number, toM: number])[] {
  const stretches: (readonly [number, number])[] = [];
  let startM = 0;
  for (const { fromM, toM } of openings.toSorted((a, b) => a.fromM - b.fromM)) {
    if (fromM > startM) stretches.push([startM, fromM]);
    startM = Math.max(startM, toM);
  }
  if (startM < lengthM) stretches.push([startM, lengthM]);
  return stretches;
}

type Placed = { readonly plane: LocalPlane; readonly xy: readonly Xy[] };
const placed = new WeakMap<object, Placed>();

/** Plane points of a path that never changes, remembered for as long as the path lives. */
export function planePath(plane: LocalPlane, path: readonly LonLat[]): readonly Xy[] {
  const known = placed.get(path);
  if (known?.plane === plane) return known.xy;
  const xy = path.map(plane.toXy);
  placed.set(path, { plane, xy });
  return xy;
}

function planePoint(plane: LocalPlane, at: LonLat): Xy {
  const known = placed.get(at);
  if (known?.plane === plane) return known.xy[0]!;
  const xy = plane.toXy(at);
  placed.set(at, { plane, xy: [xy] });
  return xy;
}

/** Of a path that has no place; such parts are left out. */
const nowhere: Box = [Number.NaN, Number.NaN, Number.NaN, Number.NaN];

const boxOf = (path: readonly Xy[]): Box | null => boxAround(path);

const boxAt = ([x, y]: Xy, marginM: number): Box => [x - marginM, y - marginM, x + marginM, y + marginM];
