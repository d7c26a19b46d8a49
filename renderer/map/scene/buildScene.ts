import { type Box, boxAround } from '../../../core/geometry/box.ts';
import { boxTree } from '../../../core/geometry/boxTree.ts';
import type { LocalPlane } from '../../../core/geometry/localPlane.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { type LeftInGround, leftInGround } from '../../../core/locate/inGround/leftInGround.ts';
import { keptFor, keptWhile } from '../../../core/model/memo.ts';
import type { Project } from '../../../core/model/project.ts';
import type { LonLat } from '../../../core/model/things.ts';
import type { Run } from '../../../core/network/types.ts';
import { xySlice } from '../../../core/shapes/measuredPath.ts';
import type { CrossingFigures, GatewayShape, LineShape } from '../../../core/shapes/types.ts';
import type { Paddock, Survey } from '../../../core/survey/types.ts';
import { type MapId, paddockMapId } from '../mapTypes.ts';
import type { CrossingPart, Part, PiecePart } from './parts.ts';
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
  const parts: Part[] = [];
  const partsOf = new Map<MapId, Part[]>();
  const add = (part: Part): void => {
    if (!part.box.every(Number.isFinite)) return;
    parts.push(part);
    const known = partsOf.get(part.id);
    if (known) known.push(part);
    else partsOf.set(part.id, [part]);
  };
  // In the order in which they are drawn within a kind.
  addFixedParts(project, plane, add);
  for (const left of leftInGround(project, survey)) {
    if (left.thing.fate !== 'takenOut') add(inGroundPart(left));
  }
  addPaddockParts(survey, add);
  addLineParts(survey, add);
  addSignParts(project, survey, plane, add);
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

function searcher(parts: readonly Part[]): (box: Box) => Part[] {
  const tree = boxTree(parts.length, (add) => {
    for (const { box } of parts) add(...box);
  });
  return (box) => tree.search(box).map((i) => parts[i]!);
}

function extentOf(parts: readonly Part[]): Box | null {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { box } of parts) {
    west = Math.min(west, box[0]);
    south = Math.min(south, box[1]);
    east = Math.max(east, box[2]);
    north = Math.max(north, box[3]);
  }
  return west <= east ? [west, south, east, north] : null;
}

type AddPart = (part: Part) => void;

function addLineParts({ network, lines, gateways }: Survey, add: AddPart): void {
  for (const [lineId, runs] of network.runsOfLine) {
    const shape = lines.get(lineId);
    if (!shape) continue;
    const cut = cuttingOf(shape);
    for (const edge of runs) {
      const { fromM, toM } = network.edges[edge] as Run;
      add(cut(fromM, toM, edge));
    }
  }
  const openings = Map.groupBy(
    [...gateways.values()].filter(({ gateway }) => !network.runsOfLine.has(gateway.lineId)),
    ({ gateway }) => gateway.lineId,
  );
  for (const [lineId, shape] of lines) {
    if (network.runsOfLine.has(lineId) || shape.xy.length < 2) continue;
    const cut = cuttingOf(shape);
    for (const [fromM, toM] of stretchesBetween(openings.get(lineId) ?? [], shape.lengthM)) add(cut(fromM, toM, -1));
  }
}

function addSignParts(project: Project, survey: Survey, plane: LocalPlane, add: AddPart): void {
  const crossingEdges = new Map<string, number>();
  const { edges } = survey.network;
  for (let index = 0; index < edges.length; index++) {
    const edge = edges[index]!;
    if (edge.kind === 'crossing') crossingEdges.set(edge.gatewayId, index);
  }
  for (const shape of survey.gateways.values()) {
    add(gatewayPart(shape));
    const { id } = shape.gateway;
    const figures = survey.crossings.get(id);
    if (figures) add(crossingPart(figures, shape, crossingEdges.get(id) ?? -1));
  }
  const leadOutPath = (id: string) => planePath(plane, project.leadOut.get(id)?.path ?? []);
  for (const row of survey.switches) {
    const into = switchInto(survey, leadOutPath, row.switch.place);
    add({ kind: 'switch', id: row.switch.id, row, into, box: boxAt(row.xy, 0) });
  }
}

const gatewayPart = keptFor((shape: GatewayShape): Part => {
  const { id, widthM } = shape.gateway;
  // A leaf reaches out of the opening by its own width.
  return { kind: 'gateway', id, shape, box: boxAt(shape.centre, widthM * 1.2) };
});

const inGroundPart = keptFor((left: LeftInGround): Part => {
  const box = boxOf(left.ways.flat());
  return { kind: 'inGround', id: left.thing.id, left, box: box ?? nowhere };
});

const crossings = new WeakMap<CrossingFigures, CrossingPart>();

function crossingPart(figures: CrossingFigures, shape: GatewayShape, edge: number): CrossingPart {
  const before = crossings.get(figures);
  if (before?.shape === shape && before.edge === edge) return before;
  const box = before?.box ?? boxOf(figures.path) ?? boxAt(shape.centre, shape.gateway.widthM);
  const part: CrossingPart = { kind: 'crossing', id: figures.crossing.id, figures, shape, edge, box };
  crossings.set(figures, part);
  return part;
}

function addPaddockParts(survey: Survey, add: AddPart): void {
  for (const paddock of survey.paddocks) add(paddockPart(paddock));
}

const paddockPart = keptFor((paddock: Paddock): Part => {
  return { kind: 'paddock', id: paddockMapId(paddock), paddock, box: boxOf(paddock.ring) ?? nowhere };
});

/** Things whose places the survey does not hold in the plane. */
function addFixedParts(project: Project, plane: LocalPlane, add: AddPart): void {
  for (const service of project.service.values()) {
    const xy = planePath(plane, service.path);
    add({ kind: 'service', id: service.id, service, xy, box: boxOf(xy) ?? nowhere });
  }
  for (const leadOut of project.leadOut.values()) {
    const xy = planePath(plane, leadOut.path);
    add({ kind: 'leadOut', id: leadOut.id, leadOut, xy, box: boxOf(xy) ?? nowhere });
  }
  for (const earthField of project.earthField.values()) {
    const xy = pointIn(earthField.at, plane);
    add({ kind: 'earthField', id: earthField.id, earthField, xy, box: boxAt(xy, 0) });
  }
  for (const post of project.post.values()) {
    const xy = pointIn(post.at, plane);
    add({ kind: 'post', id: post.id, post, xy, box: boxAt(xy, 0) });
  }
  for (const energiser of project.energiser.values()) {
    const xy = pointIn(energiser.at, plane);
    add({ kind: 'energiser', id: energiser.id, energiser, xy, box: boxAt(xy, 0) });
  }
}

/** The pieces that each line was cut into last, in order along it. */
const lastCut = new WeakMap<LineShape, PiecePart[]>();

/** Cuts a line from its start on; a piece that was cut there the last time is taken from then. */
function cuttingOf(shape: LineShape): (fromM: number, toM: number, edge: number) => PiecePart {
  const before = lastCut.get(shape) ?? [];
  const pieces: PiecePart[] = [];
  lastCut.set(shape, pieces);
  let next = 0;
  return (fromM, toM, edge) => {
    while (next < before.length && before[next]!.fromM < fromM) next++;
    const same = before[next]?.fromM === fromM && before[next]!.toM === toM ? before[next]! : null;
    const piece = same?.edge === edge ? same : pieceOf(shape, fromM, toM, edge, same);
    pieces.push(piece);
    return piece;
  };
}

/** `same` is this very piece as another edge. */
function pieceOf(shape: LineShape, fromM: number, toM: number, edge: number, same: PiecePart | null): PiecePart {
  const xy = same?.xy ?? xySlice(shape, fromM, toM);
  const box = same?.box ?? boxOf(xy) ?? nowhere;
  return { kind: 'piece', id: shape.line.id, shape, fromM, toM, edge, xy, box };
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

/** Plane points of a path that never changes, remembered for as long as the path lives. */
export const planePath = (plane: LocalPlane, path: readonly LonLat[]): readonly Xy[] => pathIn(path, plane);

const pathIn = keptWhile((path: readonly LonLat[], plane: LocalPlane): readonly Xy[] => path.map(plane.toXy));
const pointIn = keptWhile((at: LonLat, plane: LocalPlane): Xy => plane.toXy(at));

/** Of a path that has no place; such parts are left out. */
const nowhere: Box = [Number.NaN, Number.NaN, Number.NaN, Number.NaN];

const boxOf = (path: readonly Xy[]): Box | null => boxAround(path);

const boxAt = ([x, y]: Xy, marginM: number): Box => [x - marginM, y - marginM, x + marginM, y + marginM];
