import { message } from '../../words/message.ts';
import { parsePlaceKey, thingsOfPlaceKey } from '../placeKey.ts';
import { type Project, removeAll } from '../project.ts';
import { refTo } from '../refTo.ts';
import type { Kind, Thing } from '../things.ts';
import { type Edit, firstRefusal, firstRefusalOf, guarded, type Refusal, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';

export interface ThingRef {
  readonly kind: Kind;
  readonly id: string;
}

/**
 * Takes things out, and with each what can't be without it: a fence line takes its gateways, switches and added switch
 * places; a gateway its crossing and switches; an energiser its lead-outs and earth fields; a lead-out its switch; and
 * all of them the user's word on those places and their places in stages; a stage takes the marks of what is in it. A
 * crossing takes its record and its buried points, an earth field its tests, a built thing its mark, and each its
 * photos. Readings and searches for faults stay: they say what once was; and so do ties from a post that goes: they
 * keep its place.
 */
export function deleteThings(refs: readonly ThingRef[]): Edit {
  return guarded(whyNotDeleteThings(refs), (project) => removeAll(project, withDependants(project, refs)));
}

/** `notFound`, `theProperty`, `inUse` (a fence type or conductor that something else is made of). */
export function whyNotDeleteThings(refs: readonly ThingRef[]): WhyNot {
  return (project) =>
    firstRefusal(
      () => firstRefusalOf(refs.map((ref) => () => whyNotFound(project, ref.kind, ref.id))),
      () => whyNotProperty(refs),
      () => whyNotUnused(project, refs),
    );
}

/** The things of `refs` and all that would go with them, so that a question can name them beforehand. */
export function withDependants(project: Project, refs: readonly ThingRef[]): Thing[] {
  const going = new Map<string, Thing>();
  const gone = (kind: Kind, id: string) => going.has(`${kind} ${id}`);
  const take = (thing: Thing) => going.set(`${thing.kind} ${thing.id}`, thing);
  for (const { kind, id } of refs) take(found(project, kind, id));
  const takeWhere = <T extends Thing>(table: ReadonlyMap<string, T>, goes: (thing: T) => boolean) => {
    for (const thing of table.values()) if (!gone(thing.kind, thing.id) && goes(thing)) take(thing);
  };
  takeWhere(project.gateway, ({ lineId }) => gone('fenceLine', lineId));
  takeWhere(project.crossing, ({ gatewayId }) => gone('gateway', gatewayId));
  takeWhere(project.leadOut, ({ energiserId }) => gone('energiser', energiserId));
  takeWhere(project.earthField, ({ energiserId }) => gone('energiser', energiserId));
  takeWhere(project.switchCandidate, ({ lineId }) => gone('fenceLine', lineId));
  takeWhere(project.switch, ({ place }) => {
    if (place.on === 'gateway') return gone('gateway', place.gatewayId);
    return place.on === 'leadOut' ? gone('leadOut', place.leadOutId) : gone('fenceLine', place.lineId);
  });
  takeWhere(project.fenceMake, ({ typeId }) => gone('fenceType', typeId));
  takeWhere(project.crossingRecord, ({ crossingId }) => gone('crossing', crossingId));
  takeWhere(project.buriedPoint, ({ crossingId }) => gone('crossing', crossingId));
  takeWhere(project.earthTest, ({ earthFieldId }) => gone('earthField', earthFieldId));
  takeWhere(project.builtMark, ({ thingKind, thingId }) => gone(thingKind, thingId));
  takeWhere(project.photo, ({ of }) => of !== null && gone(of.kind, of.id));
  const goneIds = new Set([...going.values()].map(({ id }) => id));
  takeWhere(project.stageMark, ({ thingId, stageId }) => gone('stage', stageId) || goneIds.has(thingId));
  takeWhere(project.switchRule, ({ id }) => {
    const key = parsePlaceKey(id);
    return key !== null && thingsOfPlaceKey(key).some((thing) => gone(thing.kind, thing.id));
  });
  return [...going.values()];
}

function whyNotProperty(refs: readonly ThingRef[]): Refusal | null {
  if (!refs.some(({ kind }) => kind === 'property')) return null;
  return { code: 'theProperty', message: message('edits.theProperty') };
}

function whyNotUnused(project: Project, refs: readonly ThingRef[]): Refusal | null {
  for (const { kind, id } of refs) {
    if (kind !== 'fenceType' && kind !== 'conductor') continue;
    const going = new Set(refs.map((ref) => `${ref.kind} ${ref.id}`));
    const users = usersOf(project, kind, id).filter((thing) => !going.has(`${thing.kind} ${thing.id}`));
    if (users.length === 0) continue;
    const first = users[0]!;
    const thing = refTo(found(project, kind, id));
    const values = { thing, user: refTo(first), more: users.length - 1 };
    return { code: 'inUse', message: message('edits.inUse', values) };
  }
  return null;
}

function usersOf(project: Project, kind: 'fenceType' | 'conductor', id: string): Thing[] {
  if (kind === 'fenceType') return [...project.fenceLine.values()].filter(({ typeId }) => typeId === id);
  return [
    ...[...project.fenceType.values()].filter(({ wireId, plainWireId }) => wireId === id || plainWireId === id),
    ...[...project.crossing.values()].filter(({ cableId }) => cableId === id),
    ...[...project.leadOut.values()].filter(({ cableId }) => cableId === id),
  ];
}
