import { readBody } from '../../api/readBody.ts';
import { whyNotUnknown } from '../../api/unknownFields.ts';
import { bodyVersion } from '../../kinds/upgrade.ts';
import { whyNotAtMost, whyNotFields } from '../../model/edits/support/checkFields.ts';
import { fieldRules, type Rule } from '../../model/edits/support/fieldRules.ts';
import { pathIn } from '../../model/edits/support/path.ts';
import { whyNotPoint } from '../../model/edits/support/whyNotPath.ts';
import { parsePlaceKey, thingsOfPlaceKey } from '../../model/placeKey.ts';
import type { Project } from '../../model/project.ts';
import { crossingRecordId } from '../../model/recordDefaults.ts';
import type { Kind, LonLat, SwitchPlace, Thing } from '../../model/things.ts';
import { lonLatAt, nearestOn } from '../../shapes/measuredPath.ts';
import { type Message, message } from '../../words/message.ts';
import { clockwiseProperty, type ExchangedKind, isField } from '../preview/ours.ts';
import { isObject, own, type RawObject } from '../preview/raw.ts';
import type { PreviewFeature } from '../preview/types.ts';
import { clauseOf } from './intake.ts';
import { sameValue } from './sameValue.ts';

export type Checked = { readonly ok: true; readonly thing: Thing } | { readonly ok: false; readonly why: Message };

/**
 * The thing as a feature of ours gives it: whole, within all bounds, standing on things that are there. What the
 * feature leaves out is taken from the thing of that id in the project. `only`: ids of what there can be only one of, by
 * what it is (`onlyKey`).
 */
export function checkedThing(project: Project, feature: PreviewFeature, only: ReadonlyMap<string, string>): Checked {
  const { kind, id, fields: given } = feature.ours!;
  const before = project[kind].get(id) as RawObject | undefined;
  const fields: Record<string, unknown> = {};
  const rules = fieldRules[kind] as Readonly<Record<string, Rule>>;
  for (const field of Object.keys(rules)) {
    const value = Object.hasOwn(given, field) ? own(given, field) : before?.[field];
    if (value !== undefined) fields[field] = value;
  }
  Object.assign(fields, placeFields(kind, feature));
  if (kind === 'property') fields.placed = true;
  if (kind === 'switch') fields.place = switchPlace(fields.place) ?? null;
  const missing = Object.keys(rules).find((field) => fields[field] === undefined && rules[field]!(undefined) !== null);
  if (missing) return refuse(message('exchange.taken.missingField', { field: missing }));
  const set = changedOf(fields, before);
  const refusal =
    whyNotFields(project, kind, id, withoutName(set)) ??
    whyNotNamed(project, kind, id, set) ??
    whyNotAtMost(project, { kind, id, ...fields } as Thing, set);
  if (refusal) return refuse(clauseOf(refusal));
  const read = readBody(kind, bodyVersion, { kind, id, ...beyond(rules, before, feature), ...fields });
  if (!read.ok) return refuse(message('exchange.taken.wrongField', { field: read.at.split('.')[0]! }));
  const thing = read.things[0]!;
  const tooMuch = whyNotUnknown(thing, before);
  if (tooMuch) return refuse(message('exchange.taken.unknown', { why: tooMuch }));
  const why = whyNotAnchored(project, thing, only) ?? whyNotNear(project, feature);
  return why ? refuse(why) : { ok: true, thing: anchoredAnew(project, thing, feature) };
}

/** What a thing holds beyond the fields that are known: it stays, or comes with a feature that says which fields it has. */
function beyond(rules: object, before: RawObject | undefined, { ours }: PreviewFeature): RawObject {
  const { fields, isWhole } = ours!;
  const all = Object.entries({ ...before, ...(isWhole ? fields : {}) });
  return Object.fromEntries(all.filter(([field]) => isField(field) && !Object.hasOwn(rules, field)));
}

function refuse(why: Message): Checked {
  return { ok: false, why };
}

/** What is not so already: a value that the property holds stays, were it one that nobody could set any more. */
function changedOf(fields: RawObject, before: RawObject | undefined): RawObject {
  if (!before) return fields;
  return Object.fromEntries(Object.entries(fields).filter(([field, value]) => !sameValue(before[field], value)));
}

function withoutName({ name: _, ...rest }: RawObject): RawObject {
  return rest;
}

/** A name that another thing has is no fault: it gives way later. */
function whyNotNamed(project: Project, kind: ExchangedKind, id: string, { name }: RawObject) {
  if (name === undefined) return null;
  const refusal = whyNotFields(project, kind, id, { name });
  return refusal?.code === 'nameTaken' ? null : refusal;
}

/** What the geometry of a feature says of its thing. */
function placeFields(
  kind: ExchangedKind,
  { shape, path, ours }: PreviewFeature,
): { at?: LonLat; path?: readonly LonLat[] } {
  if (path.length === 0) return {};
  switch (kind) {
    case 'fenceLine':
    case 'leadOut':
      return shape === 'point' ? {} : { path };
    case 'service':
      return { path: own(ours!.fields, clockwiseProperty) === true ? path.toReversed() : path };
    case 'post':
    case 'energiser':
    case 'earthField':
    case 'reading':
    case 'paddock':
      return shape === 'point' ? { at: path[0]! } : {};
    default:
      return {};
  }
}

const placeFieldsKnown = ['on', 'lineId', 'gatewayId', 'leadOutId', 'end', 'post', 'atM'];

/** Of what is known exactly the fields of a switch's place, and all that is not known; undefined where it is none. */
function switchPlace(value: unknown): SwitchPlace | undefined {
  if (!isObject(value)) return undefined;
  const [on, lineId, gatewayId, leadOutId] = ['on', 'lineId', 'gatewayId', 'leadOutId'].map((field) =>
    own(value, field),
  );
  const [end, post, atM] = [own(value, 'end'), own(value, 'post'), own(value, 'atM')];
  const rest = Object.fromEntries(Object.entries(value).filter(([field]) => !placeFieldsKnown.includes(field)));
  const isEnd = (which: unknown): which is 'start' | 'end' => which === 'start' || which === 'end';
  if (on === 'gateway' && typeof gatewayId === 'string' && isEnd(post)) return { ...rest, on, gatewayId, post };
  if (on === 'lineEnd' && typeof lineId === 'string' && isEnd(end)) return { ...rest, on, lineId, end };
  if (on === 'line' && typeof lineId === 'string' && Number.isFinite(atM))
    return { ...rest, on, lineId, atM: atM as number };
  if (on === 'leadOut' && typeof leadOutId === 'string') return { ...rest, on, leadOutId };
  return undefined;
}

/** Why what a thing stands on is not there; ids in fields were looked up before. */
function whyNotAnchored(project: Project, thing: Thing, only: ReadonlyMap<string, string>): Message | null {
  const other = only.get(onlyKey(thing) ?? '');
  if (other !== undefined && other !== thing.id) {
    if (thing.kind === 'crossing') return message('exchange.taken.secondCrossing');
    // What an older file holds twice stays so.
    if (!project[thing.kind].has(thing.id)) return message('exchange.taken.secondOfCrossing');
  }
  if (thing.kind === 'crossingRecord' && thing.id !== crossingRecordId(thing.crossingId)) {
    return message('exchange.taken.recordName');
  }
  if (thing.kind === 'switchRule') {
    const key = parsePlaceKey(thing.id);
    if (!key) return message('exchange.taken.noSwitchPlace');
    const missing = thingsOfPlaceKey(key).find(({ kind, id }) => !project[kind].has(id));
    return missing ? notThere(missing.kind) : null;
  }
  if (thing.kind !== 'switch') return null;
  const { place } = thing;
  if (place.on === 'gateway') return project.gateway.has(place.gatewayId) ? null : notThere('gateway');
  if (place.on === 'leadOut') return project.leadOut.has(place.leadOutId) ? null : notThere('leadOut');
  return project.fenceLine.has(place.lineId) ? null : notThere('fenceLine');
}

function notThere(kind: Kind): Message {
  return message('exchange.taken.notThere', { kind });
}

/** What a thing is the only one of: the crossing of a gateway, the foot or bend of a crossing; null of anything else. */
export function onlyKey(thing: Thing): string | null {
  if (thing.kind === 'crossing') return `crossing ${thing.gatewayId}`;
  return thing.kind === 'buriedPoint' && thing.role !== 'point' ? `${thing.role} ${thing.crossingId}` : null;
}

function whyNotNear(project: Project, { path }: PreviewFeature): Message | null {
  for (const vertex of path) {
    const refusal = whyNotPoint(project, vertex);
    if (refusal) return clauseOf(refusal);
  }
  return null;
}

/** A point further than this from where its figures put it was moved in another program. */
const movedM = 0.05;

/** A gateway or switch that was moved on the map of another program goes to the nearest place on its line. */
function anchoredAnew(project: Project, thing: Thing, { shape, path }: PreviewFeature): Thing {
  if (shape !== 'point') return thing;
  if (thing.kind === 'gateway') {
    const atM = stationNow(project, thing.lineId, thing.atM, path[0]!, thing.widthM);
    return atM === thing.atM ? thing : { ...thing, atM };
  }
  if (thing.kind === 'switch' && thing.place.on === 'line') {
    const { place } = thing;
    const atM = stationNow(project, place.lineId, place.atM, path[0]!, 0);
    return atM === place.atM ? thing : { ...thing, place: { ...place, atM } };
  }
  return thing;
}

/** `openM`: how much of the line it takes up. The point of a gateway is midway between its posts, off a bent line. */
function stationNow(project: Project, lineId: string, atM: number, point: LonLat, openM: number): number {
  const { path } = project.fenceLine.get(lineId)!;
  const whole = pathIn(project, path);
  const { lengthM, closed, plane } = whole;
  const overSeam = closed && (atM < openM / 2 || atM > lengthM - openM / 2);
  if (overSeam) return atM;
  const [fromM, toM] = [Math.max(0, atM - openM / 2), Math.min(lengthM, atM + openM / 2)];
  const [from, to] = [lonLatAt(whole, fromM), lonLatAt(whole, toM)];
  const off = Math.max(plane.earth.distanceM(from, point), plane.earth.distanceM(to, point)) - openM / 2;
  return off <= movedM ? atM : nearestOn(whole, plane.toXy(point)).stationM;
}
