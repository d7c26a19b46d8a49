import { earthAt } from '../../geometry/earth.ts';
import type { LocalPlane } from '../../geometry/localPlane.ts';
import { nearestOnPolyline } from '../../geometry/polyline.ts';
import type { Xy } from '../../geometry/types.ts';
import { add, scale } from '../../geometry/vector.ts';
import type { Change } from '../../model/difference.ts';
import { largestOf } from '../../model/extremes.ts';
import type { InGround } from '../../model/inGroundThings.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import { buildableKinds } from '../../model/recordDefaults.ts';
import type { BuriedPoint, CrossingRecord, TieFrom } from '../../model/recordThings.ts';
import type { Crossing, EarthField, Gateway, Kind, LeadOut, LonLat, Post, Thing } from '../../model/things.ts';
import { type GatewaySpan, gatewaySpan } from '../../shapes/gatewaySpan.ts';
import { measuredPath } from '../../shapes/measuredPath.ts';
import { isPlaceOnEarth, workingPlane } from '../../shapes/workingPlane.ts';
import { pointsOf } from '../crossingSource.ts';
import { isUnmeasured } from '../inTheGround.ts';
import { tieFromKey } from '../tieFrom.ts';
import { crossingsInGround } from './crossingsInGround.ts';

/** Why something buried is no longer where an edit leaves the drawing. */
export type HowGone = 'deleted' | 'overhead' | 'planned';

/** Something built, recorded or taped from that an edit would move, change or take away. */
export type Touched =
  | { readonly what: 'crossingGone'; readonly gateway: Gateway; readonly crossing: Crossing; readonly how: HowGone }
  | {
      readonly what: 'crossingMoved';
      readonly gateway: Gateway;
      readonly crossing: Crossing;
      readonly from: GatewaySpan;
      readonly to: GatewaySpan;
      /** The most that one of the gate's posts moves; 0 where only the bow changes. */
      readonly movedM: number;
    }
  | { readonly what: 'bowChanged'; readonly gateway: Gateway; readonly crossing: Crossing }
  | { readonly what: 'leadOutGone'; readonly leadOut: LeadOut; readonly how: HowGone }
  | { readonly what: 'leadOutMoved'; readonly leadOut: LeadOut; readonly movedM: number }
  | { readonly what: 'earthFieldGone'; readonly earthField: EarthField; readonly how: HowGone }
  | { readonly what: 'earthFieldMoved'; readonly earthField: EarthField; readonly movedM: number }
  /** Points of other crossings were taped from a post that moves or goes. */
  | {
      readonly what: 'markMoved' | 'markGone';
      readonly mark: Mark;
      readonly points: readonly BuriedPoint[];
      readonly movedM: number;
    }
  | { readonly what: 'recordChanged'; readonly before: CrossingRecord | BuriedPoint | InGround }
  /** It comes to a crossing of which something was measured already, so that it moves what is known to lie there. */
  | { readonly what: 'recordAdded'; readonly added: CrossingRecord | BuriedPoint }
  | { readonly what: 'recordGone'; readonly before: CrossingRecord | BuriedPoint }
  | { readonly what: 'inGroundGone'; readonly inGround: InGround }
  | { readonly what: 'builtGone'; readonly thing: Thing & { readonly name?: string } };

/** A post that tapes were held to, and where it was and is drawn (null: no longer). */
export interface Mark {
  readonly from: TieFrom;
  readonly post: Post | Gateway;
  readonly at: LonLat;
  readonly nowAt: LonLat | null;
}

/** A crossing in the ground whose gateway shifts by less than is worth a question, or whose line runs the other way. */
export interface Shifted {
  readonly gateway: Gateway;
  readonly crossing: Crossing;
  readonly from: GatewaySpan;
}

export interface GroundTouch {
  /** What has to be asked about. */
  readonly asked: readonly Touched[];
  /** What is kept where it lies without a question. */
  readonly shifted: readonly Shifted[];
  /** Gateways whose start and end post changed hands, since their line runs the other way now. */
  readonly turned: ReadonlySet<string>;
}

export interface TouchOptions {
  /** The edit writes down what was measured: changes of records and of a trench's bow are what it is for. */
  readonly recording?: boolean;
  /** The edit takes things away: built ones are asked about even where nothing lies in the ground. */
  readonly deleting?: boolean;
}

/** Nearer than this a post stands where it stood: no tape tells the difference. */
const stirredM = 0.005;

/**
 * What an edit does to things that are built, recorded or taped from. Linear in the changes and in what is recorded.
 * An edit that gives the whole drawing its place on earth touches nothing: all goes along.
 */
export function touchedBy(
  before: Project,
  after: Project,
  changes: readonly Change[],
  { recording = false, deleting = false }: TouchOptions = {},
): GroundTouch {
  const [was, is] = [propertyOf(before), propertyOf(after)];
  const none: GroundTouch = { asked: [], shifted: [], turned: new Set() };
  const mayTouch = changes.some(({ kind, before: thing }) => {
    return thing !== null || kind === 'crossingRecord' || kind === 'buriedPoint';
  });
  if (was.placed !== is.placed || !mayTouch) return none;
  const concerned = concernedGateways(before, changes);
  const spans = { from: spanIn(before), to: spanIn(after) };
  const turned = turnedGateways(before, after, concerned, spans);
  const crossings = touchedCrossings(before, after, concerned, spans, turned, recording);
  const gone = new Set(crossings.asked.flatMap((touch) => (touch.what === 'crossingGone' ? [touch.crossing.id] : [])));
  const asked = [
    ...crossings.asked,
    ...changes.flatMap((change) => touchedSupply(change, workingPlane(was))),
    ...touchedMarks(before, after, changes, concerned, spans, turned, gone),
    ...changes.flatMap((change) => touchedRecord(change, gone, recording)),
    ...(recording ? [] : changes.flatMap((change) => addedRecord(change, before))),
  ];
  const builtGone = deleting ? goneAsBuilt(changes, asked) : [];
  return { asked: [...asked, ...builtGone], shifted: crossings.shifted, turned };
}

interface Spans {
  readonly from: (gateway: Gateway) => GatewaySpan | null;
  readonly to: (gateway: Gateway) => GatewaySpan | null;
}

/** Where a gateway of a drawing has its posts; null where its line is not there. */
export function spanIn(project: Project): (gateway: Gateway) => GatewaySpan | null {
  const plane = workingPlane(propertyOf(project));
  return (gateway) => {
    const line = project.fenceLine.get(gateway.lineId);
    const geometry = line && measuredPath(line.path, plane);
    return geometry ? gatewaySpan(gateway, geometry) : null;
  };
}

/** Gateways of the drawing before that the changes may have moved, taken away, or given another crossing. */
function concernedGateways(before: Project, changes: readonly Change[]): Set<string> {
  const concerned = new Set<string>();
  const lines = new Set<string>();
  for (const { kind, id, before: thing } of changes) {
    if (thing === null) continue;
    if (kind === 'gateway') concerned.add(id);
    else if (kind === 'fenceLine') lines.add(id);
    else if (thing.kind === 'crossing') concerned.add(thing.gatewayId);
    else if (thing.kind === 'crossingRecord' || thing.kind === 'buriedPoint') {
      const crossing = before.crossing.get(thing.crossingId);
      if (crossing) concerned.add(crossing.gatewayId);
    }
  }
  if (lines.size > 0) for (const { id, lineId } of before.gateway.values()) if (lines.has(lineId)) concerned.add(id);
  return concerned;
}

/**
 * Where a line turns round, `carryAlong` changes the hands of all that is told by start and end. A gate that is hung
 * from its other post and opened to its other side in one edit has its posts where they were.
 */
function turnedGateways(before: Project, after: Project, concerned: ReadonlySet<string>, spans: Spans): Set<string> {
  const turned = new Set<string>();
  for (const id of concerned) {
    const [was, is] = [before.gateway.get(id), after.gateway.get(id)];
    if (!was || !is || was.hungFrom === is.hungFrom || was.opens === is.opens) continue;
    const [from, to] = [spans.from(was), spans.to(is)];
    if (from && to && mostMovedM(from, to, true) < mostMovedM(from, to, false)) turned.add(id);
  }
  return turned;
}

function touchedCrossings(
  before: Project,
  after: Project,
  concerned: ReadonlySet<string>,
  spans: Spans,
  turned: ReadonlySet<string>,
  recording: boolean,
): { asked: Touched[]; shifted: Shifted[] } {
  const asked: Touched[] = [];
  const shifted: Shifted[] = [];
  const stillThere = crossingsInGround(after, concerned);
  for (const crossing of crossingsInGround(before, concerned).values()) {
    const gateway = before.gateway.get(crossing.gatewayId);
    const from = gateway ? spans.from(gateway) : null;
    if (!gateway || !from) continue;
    const how = howGone(after, crossing, stillThere);
    if (how) {
      asked.push({ what: 'crossingGone', gateway, crossing, how });
      continue;
    }
    const to = spans.to(after.gateway.get(gateway.id)!);
    if (!to) {
      asked.push({ what: 'crossingGone', gateway, crossing, how: 'deleted' });
      continue;
    }
    const isTurned = turned.has(gateway.id);
    const movedM = mostMovedM(from, to, isTurned);
    if (movedM >= stirredM) asked.push({ what: 'crossingMoved', gateway, crossing, from, to, movedM });
    else if (movedM > 0 || isTurned) shifted.push({ gateway, crossing, from });
    if (!recording && !isTurned && bowDiffers(crossing, after.crossing.get(crossing.id)!)) {
      asked.push({ what: 'bowChanged', gateway, crossing });
    }
  }
  return { asked, shifted };
}

function howGone(after: Project, before: Crossing, inGround: ReadonlyMap<string, Crossing>): HowGone | null {
  const now = after.crossing.get(before.id);
  const gateway = after.gateway.get(before.gatewayId);
  if (!now || !gateway || !after.fenceLine.has(gateway.lineId)) return 'deleted';
  if (now.gatewayId !== before.gatewayId) return 'deleted';
  if (now.method !== 'buried') return 'overhead';
  // One that was planned lay in the ground by its records only: what becomes of those is asked about by itself.
  return inGround.has(before.id) || before.status === 'planned' ? null : 'planned';
}

function bowDiffers(before: Crossing, after: Crossing): boolean {
  return before.bowM !== after.bowM || before.bowSide !== after.bowSide;
}

/** The most that either post moves, metres; exactly 0 where both stand as before. */
function mostMovedM(from: GatewaySpan, to: GatewaySpan, turned: boolean): number {
  const [start, end] = turned ? [to.endPostAt, to.startPostAt] : [to.startPostAt, to.endPostAt];
  return Math.max(apartM(from.startPostAt, start), apartM(from.endPostAt, end));
}

function apartM(a: LonLat, b: LonLat): number {
  return a[0] === b[0] && a[1] === b[1] ? 0 : earthAt(a).distanceM(a, b);
}

/** Lead-outs and earth stakes in the ground. */
function touchedSupply({ before, after }: Change, plane: LocalPlane): Touched[] {
  if (before?.kind === 'leadOut' && before.buried && before.status === 'built') {
    const now = after as LeadOut | null;
    const how = supplyGone(now) ?? (now?.buried ? null : 'overhead');
    if (how) return [{ what: 'leadOutGone', leadOut: before, how }];
    const movedM = pathMovedM(before.path, now!.path, plane);
    return movedM >= stirredM ? [{ what: 'leadOutMoved', leadOut: before, movedM }] : [];
  }
  if (before?.kind === 'earthField' && before.status === 'built') {
    const now = after as EarthField | null;
    const how = supplyGone(now);
    if (how) return [{ what: 'earthFieldGone', earthField: before, how }];
    const movedM = apartM(before.at, now!.at);
    return movedM >= stirredM ? [{ what: 'earthFieldMoved', earthField: before, movedM }] : [];
  }
  return [];
}

function supplyGone(now: LeadOut | EarthField | null): HowGone | null {
  if (!now) return 'deleted';
  return now.status === 'built' ? null : 'planned';
}

/** The most that a corner of either path, or the middle between two, lies off the other path. */
function pathMovedM(from: readonly LonLat[], to: readonly LonLat[], { toXy }: LocalPlane): number {
  if (from === to) return 0;
  const [a, b] = [from.map(toXy), to.map(toXy)];
  const off = (some: readonly Xy[], path: readonly Xy[]) =>
    largestOf(withMiddles(some).map((xy) => nearestOnPolyline(xy, path)?.distanceM ?? Infinity));
  return Math.max(off(a, b), off(b, a));
}

/** A path with the middles between its corners: the same corners in another order are another way. */
function withMiddles(path: readonly Xy[]): Xy[] {
  return path.flatMap((xy, i) => (i === 0 ? [xy] : [scale(add(path[i - 1]!, xy), 0.5), xy]));
}

/** Posts that tapes were held to for other crossings than their own. */
function touchedMarks(
  before: Project,
  after: Project,
  changes: readonly Change[],
  concerned: ReadonlySet<string>,
  spans: Spans,
  turned: ReadonlySet<string>,
  gone: ReadonlySet<string>,
): Touched[] {
  const marks: Mark[] = [];
  for (const { before: was, after: is } of changes) {
    if (was?.kind !== 'post') continue;
    const nowAt = is?.kind === 'post' ? is.at : null;
    marks.push({ from: { on: 'post', postId: was.id }, post: was, at: was.at, nowAt });
  }
  for (const id of concerned) {
    const gateway = before.gateway.get(id);
    const from = gateway ? spans.from(gateway) : null;
    if (!gateway || !from) continue;
    const now = after.gateway.get(id);
    const to = now ? spans.to(now) : null;
    const [start, end] = turned.has(id) ? [to?.endPostAt, to?.startPostAt] : [to?.startPostAt, to?.endPostAt];
    const mark = { post: gateway, nowAt: null } as const;
    marks.push({
      ...mark,
      from: { on: 'gatePost', gatewayId: id, post: 'start' },
      at: from.startPostAt,
      nowAt: start ?? null,
    });
    marks.push({
      ...mark,
      from: { on: 'gatePost', gatewayId: id, post: 'end' },
      at: from.endPostAt,
      nowAt: end ?? null,
    });
  }
  if (marks.length === 0) return [];
  const tied = tiedTo(before);
  return marks.flatMap((mark): Touched[] => {
    const own = mark.from.on === 'gatePost' ? mark.from.gatewayId : null;
    const points = (tied.get(tieFromKey(mark.from)) ?? []).filter(({ crossingId }) => {
      return !gone.has(crossingId) && before.crossing.get(crossingId)?.gatewayId !== own;
    });
    if (points.length === 0) return [];
    if (!mark.nowAt || !isPlaceOnEarth(mark.nowAt)) return [{ what: 'markGone', mark, points, movedM: 0 }];
    const movedM = apartM(mark.at, mark.nowAt);
    return movedM >= stirredM ? [{ what: 'markMoved', mark, points, movedM }] : [];
  });
}

/** The points that were taped from each post, by the post's key. */
function tiedTo(project: Project): Map<string, BuriedPoint[]> {
  const tied = new Map<string, BuriedPoint[]>();
  for (const point of project.buriedPoint.values()) {
    for (const key of new Set(point.ties.map(({ from }) => tieFromKey(from)))) {
      const points = tied.get(key);
      if (points) points.push(point);
      else tied.set(key, [point]);
    }
  }
  return tied;
}

/** Records that are changed or lost by themselves, not with the crossing that they are of. */
function touchedRecord({ before, after }: Change, gone: ReadonlySet<string>, recording: boolean): Touched[] {
  if (before?.kind === 'inGround') {
    if (!after) return [{ what: 'inGroundGone', inGround: before }];
    return recording ? [] : [{ what: 'recordChanged', before }];
  }
  if (before?.kind !== 'crossingRecord' && before?.kind !== 'buriedPoint') return [];
  if (gone.has(before.crossingId)) return [];
  if (after) return recording ? [] : [{ what: 'recordChanged', before }];
  return before.kind === 'buriedPoint' && isUnmeasured(before) ? [] : [{ what: 'recordGone', before }];
}

/** Records that come in beside what was measured already. */
function addedRecord({ before: known, after }: Change, before: Project): Touched[] {
  if (known !== null || (after?.kind !== 'crossingRecord' && after?.kind !== 'buriedPoint')) return [];
  const isMeasured = pointsOf(before, after.crossingId).some((point) => !isUnmeasured(point));
  return isMeasured ? [{ what: 'recordAdded', added: after }] : [];
}

const buildable: ReadonlySet<Kind> = new Set(buildableKinds);

/** Built things that go, but for those that are asked about already. */
function goneAsBuilt(changes: readonly Change[], asked: readonly Touched[]): Touched[] {
  const known = new Set(
    asked.flatMap((touch) => {
      if (touch.what === 'crossingGone') return [touch.crossing.id];
      if (touch.what === 'leadOutGone') return [touch.leadOut.id];
      return touch.what === 'earthFieldGone' ? [touch.earthField.id] : [];
    }),
  );
  return changes.flatMap(({ before, after }): Touched[] => {
    if (!before || after || !buildable.has(before.kind) || known.has(before.id)) return [];
    return 'status' in before && before.status === 'built' ? [{ what: 'builtGone', thing: before }] : [];
  });
}
