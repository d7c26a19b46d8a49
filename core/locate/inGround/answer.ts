import { earthAt } from '../../geometry/earth.ts';
import { otherEnd } from '../../model/edits/support/carryAlong.ts';
import type { NewId } from '../../model/edits/support/edit.ts';
import type { Fate, InGround, WasCrossing } from '../../model/inGroundThings.ts';
import { type Project, put, putAll, removeAll } from '../../model/project.ts';
import { builtMarkId, crossingRecordId } from '../../model/recordDefaults.ts';
import type { BuriedPoint, Photo, TapeTie, TieFrom } from '../../model/recordThings.ts';
import type { Crossing, EarthField, Gateway, LeadOut, LineEnd, LonLat } from '../../model/things.ts';
import { plainWords } from '../../words/figures.ts';
import { pointsOf } from '../crossingSource.ts';
import { samePostM, tieFromKey } from '../tieFrom.ts';
import { recordWithOpening } from './openingThen.ts';
import { type GroundTouch, type Mark, type Shifted, spanIn, type Touched } from './touched.ts';

/** What is true on the ground, as the user answers it. */
export type GroundAnswer =
  /** What is buried stays where it lies; nobody says that it is cut off. */
  | 'stays'
  /** It stays in the ground, cut off at both ends. */
  | 'dead'
  | 'takenOut'
  /** Only the drawing is put right: what was taped from a post goes along with it. */
  | 'corrected'
  /** There never was such a thing: the record goes. */
  | 'mistake';

export interface AnswerContext {
  readonly before: Project;
  /** The project as the edit alone leaves it. */
  readonly after: Project;
  readonly touch: GroundTouch;
  readonly newId: NewId;
  /** ISO 8601 date of today. */
  readonly date: string;
}

/**
 * The edited project with what is in the ground as the answer says. Without anything to ask (`touch.asked` empty) any
 * answer gives the same: what was shifted a little, or turned, is kept where it lies.
 */
export function withAnswer(context: AnswerContext, answer: GroundAnswer): Project {
  const { after, touch } = context;
  const stands = answer === 'corrected' ? after : withRecordsKept(after, touch.asked);
  const turned = touch.turned.size > 0 ? withTiesTurned(stands, touch.turned) : stands;
  const kept = touch.shifted.reduce((project, shifted) => withOpeningKept(context, project, shifted), turned);
  return touch.asked.reduce((project, touched) => answered(context, project, touched, answer), kept);
}

/** What is recorded stays as it is: what was changed is put back, what came in is left out. */
function withRecordsKept(after: Project, asked: readonly Touched[]): Project {
  const changed = asked.flatMap((touched) => (touched.what === 'recordChanged' ? [touched.before] : []));
  const added = asked.flatMap((touched) => (touched.what === 'recordAdded' ? [touched.added] : []));
  return putAll(removeAll(after, added), changed);
}

function answered(context: AnswerContext, project: Project, touched: Touched, answer: GroundAnswer): Project {
  switch (touched.what) {
    case 'crossingGone':
      return answer === 'mistake'
        ? withoutRecords(project, touched.crossing.id)
        : withCrossingLeft(context, project, touched, fateOf(answer));
    case 'crossingMoved':
      if (answer === 'corrected') return withCrossingCorrected(context, project, touched);
      if (answer === 'stays') return withOpeningKept(context, project, touched);
      return withCrossingLeft(context, project, touched, fateOf(answer));
    case 'bowChanged':
      return answer === 'corrected' ? project : withBowKept(project, touched.crossing);
    case 'leadOutGone':
    case 'leadOutMoved':
      if (answer === 'corrected' || answer === 'mistake') return project;
      return withSupplyLeft(context, project, touched.leadOut, fateOf(answer));
    case 'earthFieldGone':
    case 'earthFieldMoved':
      if (answer === 'corrected' || answer === 'mistake') return project;
      return withSupplyLeft(context, project, touched.earthField, fateOf(answer));
    case 'markMoved':
      return answer === 'corrected' ? withMarkMoved(project, touched.mark, touched.points) : project;
    case 'inGroundGone':
      if (answer === 'mistake') return project;
      return put(project, answer === 'stays' ? touched.inGround : { ...touched.inGround, fate: fateOf(answer) });
    case 'recordChanged':
    case 'recordAdded':
    case 'recordGone':
    case 'markGone':
    case 'builtGone':
      // The records that were changed or added are seen to above; the others are asked about only to be sure.
      return project;
  }
}

function fateOf(answer: GroundAnswer): Fate {
  if (answer === 'takenOut') return 'takenOut';
  return answer === 'dead' ? 'dead' : 'inUse';
}

/** The record keeps the opening as it was: the crossing lies where it lay, and still serves its gateway. */
function withOpeningKept({ before }: AnswerContext, project: Project, { gateway, crossing, from }: Shifted): Project {
  if (!project.crossing.has(crossing.id)) return project;
  const record = recordWithOpening(before, gateway, crossing, from);
  const now = project.crossingRecord.get(record.id);
  return put(project, { ...(now ?? record), opening: record.opening });
}

/**
 * What was recorded from the gate's own posts as they were drawn goes where they go; the record's own start and end stay
 * what they are. What was recorded while they stood elsewhere is not put right by this.
 */
function withCrossingCorrected(
  { before, touch }: AnswerContext,
  project: Project,
  { gateway, crossing, from, to }: Touched & { readonly what: 'crossingMoved' },
): Project {
  const turned = touch.turned.has(gateway.id);
  const [start, end] = turned ? [to.endPostAt, to.startPostAt] : [to.startPostAt, to.endPostAt];
  const nowAt = { start, end };
  const wasAt = { start: from.startPostAt, end: from.endPostAt };
  const shifted = (at: LonLat, post: LineEnd) => alongWith(at, wasAt[post], nowAt[post]);
  const moved = pointsOf(project, crossing.id).map((point): BuriedPoint => {
    const then = before.buriedPoint.get(point.id);
    const ties = point.ties.map((tie, i): TapeTie => {
      const asked = (then?.ties[i] ?? tie).from;
      return asked.on === 'gatePost' && asked.gatewayId === gateway.id && stoodAt(tie.postAt, wasAt[asked.post])
        ? { ...tie, postAt: shifted(tie.postAt, asked.post) }
        : tie;
    });
    return { ...point, ties };
  });
  const record = recordWithOpening(before, gateway, crossing, from);
  const { opening } = record;
  const held = before.crossingRecord.get(record.id)?.opening !== undefined;
  if (!held && !turned) return putAll(project, moved);
  const [startPostAt, endPostAt] = [opening.startPostAt, opening.endPostAt].map((at) => {
    const post = nearerEnd(at, wasAt);
    return stoodAt(at, wasAt[post]) ? shifted(at, post) : at;
  }) as [LonLat, LonLat];
  const now = project.crossingRecord.get(record.id) ?? record;
  return putAll(project, [...moved, { ...now, opening: { ...opening, startPostAt, endPostAt } }]);
}

function nearerEnd(at: LonLat, posts: Readonly<Record<LineEnd, LonLat>>): LineEnd {
  const off = ([lon, lat]: LonLat) => Math.hypot(lon - at[0], lat - at[1]);
  return off(posts.start) <= off(posts.end) ? 'start' : 'end';
}

/** Whether a place that was recorded is that of a post as it was drawn, as far as a tape can tell. */
function stoodAt(recordedAt: LonLat, drawnAt: LonLat): boolean {
  return earthAt(drawnAt).distanceM(recordedAt, drawnAt) < samePostM;
}

/** A place moved by as much as a post was, in degrees: over the metres of a gate that is the same as in metres. */
function alongWith(at: LonLat, from: LonLat, to: LonLat): LonLat {
  return [at[0] + to[0] - from[0], at[1] + to[1] - from[1]];
}

function withBowKept(project: Project, { id, bowM, bowSide }: Crossing): Project {
  const now = project.crossing.get(id);
  return now ? put(project, { ...now, bowM, bowSide }) : project;
}

/** The crossing with all that was recorded of it, kept apart from the drawing; what is still drawn is planned anew. */
function withCrossingLeft(
  context: AnswerContext,
  project: Project,
  { gateway, crossing }: { readonly gateway: Gateway; readonly crossing: Crossing },
  fate: Fate,
): Project {
  const { before } = context;
  const span = spanIn(before)(gateway)!;
  const was: WasCrossing = {
    what: 'crossing',
    gateway,
    lineName: before.fenceLine.get(gateway.lineId)?.name ?? '',
    crossing,
    record: recordWithOpening(before, gateway, crossing, span),
    points: pointsOf(before, crossing.id),
    mark: before.builtMark.get(builtMarkId('crossing', crossing.id)) ?? null,
  };
  const kept = newInGround(
    context,
    project,
    plainWords().locate.buried.old.crossing({ gateway: gateway.name }),
    fate,
    was,
  );
  const drawn = project.crossing.get(crossing.id);
  const anew = drawn?.method === 'buried' ? [{ ...drawn, status: 'planned', bowM: null, sealed: null } as const] : [];
  const bare = withoutRecords(project, crossing.id);
  return putAll(bare, [...anew, kept, ...photosOf(context, project, crossing.id, kept.id)]);
}

/** A lead-out or earth stakes likewise. */
function withSupplyLeft(context: AnswerContext, project: Project, thing: LeadOut | EarthField, fate: Fate): Project {
  const { before } = context;
  const energiserName = before.energiser.get(thing.energiserId)?.name ?? '';
  const mark = before.builtMark.get(builtMarkId(thing.kind, thing.id)) ?? null;
  const tests = [...before.earthTest.values()].filter(({ earthFieldId }) => earthFieldId === thing.id);
  const { leadOut, earthStakes } = plainWords().locate.buried.old;
  const [was, name]: [InGround['was'], string] =
    thing.kind === 'leadOut'
      ? [{ what: 'leadOut', leadOut: thing, energiserName, mark }, leadOut({ name: thing.name })]
      : [
          { what: 'earthField', earthField: thing, energiserName, tests, mark },
          earthStakes({ energiser: energiserName }),
        ];
  const kept = newInGround(context, project, name, fate, was);
  const drawn = project[thing.kind].get(thing.id) as LeadOut | EarthField | undefined;
  const nowMark = project.builtMark.get(builtMarkId(thing.kind, thing.id));
  const stillBuried = drawn && (drawn.kind === 'earthField' || drawn.buried);
  const bare = removeAll(project, [
    ...(stillBuried && nowMark ? [nowMark] : []),
    ...tests.filter(({ id }) => project.earthTest.has(id)),
  ]);
  const anew = stillBuried ? [{ ...drawn, status: 'planned' as const }] : [];
  return putAll(bare, [...anew, kept, ...photosOf(context, project, thing.id, kept.id)]);
}

function newInGround(
  { newId, date }: AnswerContext,
  project: Project,
  name: string,
  fate: Fate,
  was: InGround['was'],
): InGround {
  return { kind: 'inGround', id: newId('inGround'), name: freeName(project, name), fate, since: date, note: '', was };
}

/** Two old crossings of one gateway are told apart: "old crossing under G1 (2)". */
function freeName(project: Project, name: string): string {
  const taken = new Set([...project.inGround.values()].map((each) => each.name));
  let free = name;
  for (let number = 2; taken.has(free); number++) free = `${name} (${number})`;
  return free;
}

/** Photos go along with what they show, also those that went with it from the drawing. */
function photosOf({ before }: AnswerContext, project: Project, thingId: string, keptId: string): Photo[] {
  const shown = [...before.photo.values(), ...project.photo.values()].filter(({ of }) => of?.id === thingId);
  return [...new Map(shown.map((photo) => [photo.id, photo])).values()].map((photo) => {
    return { ...photo, of: { kind: 'inGround', id: keptId } };
  });
}

/** Without what was recorded of a crossing. */
function withoutRecords(project: Project, crossingId: string): Project {
  const record = project.crossingRecord.get(crossingRecordId(crossingId));
  const mark = project.builtMark.get(builtMarkId('crossing', crossingId));
  return removeAll(project, [...pointsOf(project, crossingId), ...(record ? [record] : []), ...(mark ? [mark] : [])]);
}

/** Points of other crossings go along with the post that they were taped from, where it was drawn then as it was now. */
function withMarkMoved(project: Project, { from, at, nowAt }: Mark, points: readonly BuriedPoint[]): Project {
  const key = tieFromKey(from);
  const moved = points.flatMap(({ id, ties: asked }): BuriedPoint[] => {
    const point = project.buriedPoint.get(id);
    if (!point) return [];
    const ties = point.ties.map((tie, i) =>
      asked[i] && tieFromKey(asked[i].from) === key && stoodAt(tie.postAt, at)
        ? { ...tie, postAt: alongWith(tie.postAt, at, nowAt!) }
        : tie,
    );
    return [{ ...point, ties }];
  });
  return putAll(project, moved);
}

/** Tapes held to the start post of a gateway that was turned were held to what is its end post now. */
function withTiesTurned(project: Project, turned: ReadonlySet<string>): Project {
  const isTurned = (from: TieFrom) => from.on === 'gatePost' && turned.has(from.gatewayId);
  const points = [...project.buriedPoint.values()].filter(({ ties }) => ties.some(({ from }) => isTurned(from)));
  const now = points.map((point): BuriedPoint => {
    const ties = point.ties.map((tie): TapeTie => {
      const { from } = tie;
      if (from.on !== 'gatePost' || !turned.has(from.gatewayId)) return tie;
      return { ...tie, from: { ...from, post: otherEnd(from.post) } };
    });
    return { ...point, ties };
  });
  return putAll(project, now);
}
