import { createSpatialIndex, type SpatialIndex } from '../../geometry/spatialIndex.ts';
import type { Xy } from '../../geometry/types.ts';
import { turnAngleDeg } from '../../geometry/vector.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { Gateway, OrderSettings, Post } from '../../model/things.ts';
import { type GatewaySpan, gatewaySpan } from '../../shapes/gatewaySpan.ts';
import { leastLengthM, type MeasuredPath, measuredPath, wrapStation, xyAt } from '../../shapes/measuredPath.ts';
import type { LineShape } from '../../shapes/types.ts';
import type { Survey } from '../../survey/types.ts';
import { PointSet } from './pointSet.ts';

/** What stands at a fixed place of a fence line; of several, the first of this list. */
export type FixedRole = 'gatePost' | 'strainer' | 'angle' | 'post';
const ranks: readonly FixedRole[] = ['gatePost', 'strainer', 'angle', 'post'];

/** A place of a line where a certain post must stand. */
export interface Station {
  readonly atM: number;
  /** Index of the physical post, which other lines may share. */
  readonly post: number;
  readonly role: FixedRole;
  /** The wires end here, on this side or both; else they pass. */
  readonly tied: boolean;
  /** The gateway whose post it is. */
  readonly gateway: Gateway | null;
}

/** A piece of fence between two ends or openings: fixed places from its first to its last. */
export interface Stretch {
  readonly stations: readonly Station[];
}

export interface LinePosts {
  readonly shape: LineShape;
  readonly stretches: readonly Stretch[];
}

/** A post that stands once, however many lines come to it. */
export interface FencePost {
  readonly xy: Xy;
  readonly role: FixedRole;
  readonly marked: Post | null;
}

export interface FencePosts {
  readonly lines: readonly LinePosts[];
  readonly posts: readonly FencePost[];
}

interface Draft {
  readonly atM: number;
  readonly xy: Xy;
  readonly role: FixedRole;
  readonly tied: boolean;
  readonly gateway: Gateway | null;
  readonly marked: Post | null;
}

/**
 * The fixed posts of all fence lines: ends, gate posts, bends, marked posts, and wherever another line touches. Points
 * within the snap tolerance of each other are one post, so that a post which lines share is counted once. Wires are
 * tied off at ends, gate posts, corners and strainers, and where a strain would be longer than allowed.
 */
export function fencePosts(project: Project, survey: Survey, settings: OrderSettings): FencePosts {
  const toleranceM = propertyOf(project).snapToleranceM;
  const shapes = [...survey.lines.values()].filter(({ lengthM }) => lengthM > leastLengthM);
  const index = createSpatialIndex<LineShape>(shapes.map((shape) => [shape, shape.xy]));
  const touches = touchesOfLines(shapes, index, toleranceM);
  const marked = markedPosts(project, survey, index, toleranceM);
  const gateways = Map.groupBy(project.gateway.values(), ({ lineId }) => lineId);
  const points = new PointSet(toleranceM);
  const posts: FencePost[] = [];
  const stationOf = (draft: Draft): Station => {
    const post = points.add(draft.xy);
    const known = posts[post];
    posts[post] = {
      xy: known?.xy ?? draft.xy,
      role: known && ranks.indexOf(known.role) <= ranks.indexOf(draft.role) ? known.role : draft.role,
      marked: known?.marked ?? draft.marked,
    };
    return { atM: draft.atM, post, role: draft.role, tied: draft.tied, gateway: draft.gateway };
  };
  const lines = shapes.map((shape): LinePosts => {
    const geometry = measuredPath(shape.line.path, survey.plane)!;
    const spans = (gateways.get(shape.line.id) ?? [])
      .map((gateway) => gatewaySpan(gateway, geometry))
      .filter(({ fault }) => fault !== 'noOpening');
    const drafts = [
      ...endDrafts(shape),
      ...bendDrafts(shape, settings),
      ...spans.flatMap((span) => gateDrafts(span, geometry)),
      ...(marked.get(shape) ?? []),
      ...(touches.get(shape) ?? []),
    ];
    const stretches = stretchesOf(drafts, spans, geometry, toleranceM)
      .map((stretch) => withMoreStrainers(stretch, geometry, settings.maxStrainM))
      .map((stretch) => ({ stations: stretch.map(stationOf) }));
    return { shape, stretches };
  });
  return { lines, posts };
}

function endDrafts({ xy, lengthM }: LineShape): Draft[] {
  const end = { role: 'strainer', tied: true, gateway: null, marked: null } as const;
  return [
    { ...end, atM: 0, xy: xy[0]! },
    { ...end, atM: lengthM, xy: xy.at(-1)! },
  ];
}

/** A bend drawn at just the angle of a rule counts, whatever the last bits of its bearings say. */
const angleSlackDeg = 0.01;

function bendDrafts(shape: LineShape, { angleFromDeg, strainerFromDeg }: OrderSettings): Draft[] {
  const corners = cornersOf(shape);
  return corners.slice(1, -1).flatMap(({ xy, atM }, i): Draft[] => {
    const turnDeg = Math.abs(turnAngleDeg(corners[i]!.xy, xy, corners[i + 2]!.xy)) + angleSlackDeg;
    if (turnDeg < angleFromDeg && turnDeg < strainerFromDeg) return [];
    const corner = turnDeg >= strainerFromDeg;
    const role = corner ? 'strainer' : 'angle';
    return [{ atM, xy, role, tied: corner, gateway: null, marked: null }];
  });
}

/** A line's vertices with their stations; of several on top of each other the first. */
function cornersOf({ xy, stationsM }: LineShape): { readonly xy: Xy; readonly atM: number }[] {
  const corners: { xy: Xy; atM: number }[] = [];
  for (const [i, vertex] of xy.entries()) {
    const atM = stationsM[i]!;
    if (i === 0 || atM - corners.at(-1)!.atM > leastLengthM) corners.push({ xy: vertex, atM });
  }
  return corners;
}

function gateDrafts({ gateway, fromM, toM, startPost, endPost }: GatewaySpan, geometry: MeasuredPath): Draft[] {
  const post = { role: 'gatePost', tied: true, gateway, marked: null } as const;
  return [
    { ...post, atM: wrapStation(fromM, geometry), xy: startPost },
    { ...post, atM: wrapStation(toM, geometry), xy: endPost },
  ];
}

/** Where the ends and vertices of other lines touch a line; by that line. */
function touchesOfLines(shapes: readonly LineShape[], index: SpatialIndex<LineShape>, toleranceM: number) {
  const drafts = new Map<LineShape, Draft[]>();
  for (const shape of shapes) {
    for (const [i, vertex] of shape.xy.entries()) {
      const end = i === 0 || i === shape.xy.length - 1;
      for (const near of index.near(vertex, toleranceM)) {
        if (near.key === shape) continue;
        const role = end ? 'strainer' : 'post';
        push(drafts, near.key, passing(near.key, near, vertex, role, null));
      }
    }
  }
  return drafts;
}

function markedPosts(project: Project, survey: Survey, index: SpatialIndex<LineShape>, toleranceM: number) {
  const drafts = new Map<LineShape, Draft[]>();
  for (const post of project.post.values()) {
    const xy = survey.plane.toXy(post.at);
    for (const near of index.near(xy, toleranceM)) {
      const role = post.role === 'other' ? 'post' : post.role;
      const draft = passing(near.key, near, xy, role, post);
      push(drafts, near.key, { ...draft, tied: role === 'strainer' });
    }
  }
  return drafts;
}

function passing(
  { stationsM }: LineShape,
  { segment, fraction }: { readonly segment: number; readonly fraction: number },
  xy: Xy,
  role: FixedRole,
  marked: Post | null,
): Draft {
  const atM = stationsM[segment]! + fraction * (stationsM[segment + 1]! - stationsM[segment]!);
  return { atM, xy, role, tied: false, gateway: null, marked };
}

/** The drafts of each piece between openings, in order; what stands inside an opening is left out, neighbours are one. */
function stretchesOf(
  drafts: readonly Draft[],
  spans: readonly GatewaySpan[],
  geometry: MeasuredPath,
  toleranceM: number,
): Draft[][] {
  const pieces = piecesBetween(
    spans.flatMap(({ openings }) => openings),
    geometry.lengthM,
  );
  return pieces.map(([fromM, toM]) => {
    const inside = drafts.filter(({ atM }) => atM >= fromM - leastLengthM && atM <= toM + leastLengthM);
    return mergeNeighbours(
      inside.sort((a, b) => a.atM - b.atM),
      toleranceM,
    );
  });
}

function piecesBetween(openings: readonly (readonly [number, number])[], lengthM: number): [number, number][] {
  const pieces: [number, number][] = [];
  let fromM = 0;
  for (const [openM, shutM] of [...openings].sort((a, b) => a[0] - b[0])) {
    if (openM - fromM > leastLengthM) pieces.push([fromM, openM]);
    fromM = Math.max(fromM, shutM);
  }
  if (lengthM - fromM > leastLengthM) pieces.push([fromM, lengthM]);
  return pieces;
}

function mergeNeighbours(drafts: readonly Draft[], toleranceM: number): Draft[] {
  const merged: Draft[] = [];
  for (const draft of drafts) {
    const last = merged.at(-1);
    if (!last || draft.atM - last.atM > toleranceM) {
      merged.push(draft);
      continue;
    }
    const [main, other] = ranks.indexOf(draft.role) < ranks.indexOf(last.role) ? [draft, last] : [last, draft];
    merged[merged.length - 1] = {
      ...main,
      tied: main.tied || other.tied,
      gateway: main.gateway ?? other.gateway,
      marked: main.marked ?? other.marked,
    };
  }
  return merged;
}

/** Cuts each strain that is too long into equal ones with a strainer between. */
function withMoreStrainers(drafts: readonly Draft[], geometry: MeasuredPath, maxStrainM: number): Draft[] {
  const more: Draft[] = [];
  const tied = drafts.filter((draft) => draft.tied);
  for (const [i, end] of tied.slice(1).entries()) {
    const fromM = tied[i]!.atM;
    const count = Math.ceil((end.atM - fromM) / maxStrainM - 1e-9);
    for (let k = 1; k < count; k++) {
      const atM = fromM + ((end.atM - fromM) * k) / count;
      more.push({ atM, xy: xyAt(geometry, atM), role: 'strainer', tied: true, gateway: null, marked: null });
    }
  }
  return more.length === 0 ? [...drafts] : [...drafts, ...more].sort((a, b) => a.atM - b.atM);
}

function push<K>(map: Map<K, Draft[]>, key: K, draft: Draft): void {
  const list = map.get(key);
  if (list) list.push(draft);
  else map.set(key, [draft]);
}
