import { kindsIn } from '../kinds/allKinds.ts';
import { keptFor } from '../model/memo.ts';
import { type Project, projectOf } from '../model/project.ts';
import { buildableKinds } from '../model/recordDefaults.ts';
import type { BuildableThing, Handover } from '../model/recordThings.ts';
import { refTo } from '../model/refTo.ts';
import type { Kind, Thing } from '../model/things.ts';
import { surveyOf } from '../survey/survey.ts';
import type { Survey } from '../survey/types.ts';
import { type Message, message } from '../words/message.ts';
import { type ChangedField, changedFields } from './changedFields.ts';
import { apartM, samePlaceM } from './differences.ts';
import { nameOf, placesOf } from './places.ts';

/** One thing that is not what it was at a handover. */
export interface ChangeSince {
  readonly kind: Kind;
  readonly id: string;
  readonly name: Message;
  readonly what: 'new' | 'gone' | 'changed' | 'built';
  /** How far it was moved; 0 where it stands where it stood. */
  readonly movedM: number;
  readonly changes: readonly ChangedField[];
}

interface Then {
  readonly project: Project;
  readonly survey: Survey;
}

/** The property as it was handed over. */
export const asHandedOver = keptFor(({ things }: Handover): Then => {
  const project = projectOf(things);
  return { project, survey: surveyOf(project) };
});

/** What is new, gone or changed since a handover, kind by kind. */
export function changesSince(handover: Handover, project: Project, survey: Survey): ChangeSince[] {
  const before = asHandedOver(handover);
  return kindsIn('changes').flatMap((kind) => {
    const from = before.project[kind] as ReadonlyMap<string, Thing>;
    const to = project[kind] as ReadonlyMap<string, Thing>;
    const gone = [...from.values()].filter(({ id }) => !to.has(id));
    return [
      ...gone.map((thing) => plainChange(thing, 'gone', before.project)),
      ...[...to.values()].flatMap((thing) => {
        const was = from.get(thing.id);
        if (!was) return [plainChange(thing, 'new', project)];
        return changeOf(was, thing, before, { project, survey });
      }),
    ];
  });
}

function plainChange(thing: Thing, what: 'new' | 'gone', project: Project): ChangeSince {
  return { kind: thing.kind, id: thing.id, name: nameInWords(thing, project), what, movedM: 0, changes: [] };
}

function changeOf(was: Thing, is: Thing, before: Then, now: Then): ChangeSince[] {
  const placed = isBuildable(was) && isBuildable(is);
  // What a thing stands on may have moved under it, so its place is looked at even where it itself is the same.
  const movedM = placed ? movedBetween(was, is, before, now) : pointMovedM(was, is, now.survey);
  if (was === is && movedM === 0) return [];
  const changes = changedFields(was, is, now.project);
  const built = placed && was.status === 'planned' && is.status === 'built';
  if (movedM === 0 && changes.length === 0 && !built) return [];
  const name = nameInWords(is, now.project);
  return [{ kind: is.kind, id: is.id, name, what: built ? 'built' : 'changed', movedM, changes }];
}

function isBuildable(thing: Thing): thing is BuildableThing {
  return (buildableKinds as readonly Kind[]).includes(thing.kind);
}

function movedBetween(was: BuildableThing, is: BuildableThing, before: Then, now: Then): number {
  const { toXy } = now.survey.plane;
  const from = placesOf(was, before.project, before.survey).map(toXy);
  const movedM = apartM(from, placesOf(is, now.project, now.survey).map(toXy));
  return movedM > samePlaceM ? movedM : 0;
}

function pointMovedM(was: Thing, is: Thing, { plane }: Survey): number {
  if (!('at' in was && 'at' in is)) return 0;
  const movedM = apartM([plane.toXy(was.at)], [plane.toXy(is.at)]);
  return movedM > samePlaceM ? movedM : 0;
}

function nameInWords(thing: Thing, project: Project): Message {
  if (thing.kind === 'crossingRecord' || thing.kind === 'buriedPoint') {
    const drawn = project.crossing.get(thing.crossingId);
    const crossing = drawn ? nameOf(drawn, project) : message('record.names.crossingGone');
    return thing.kind === 'crossingRecord'
      ? message('record.names.recordOf', { crossing })
      : message('record.names.pointOf', { point: thing.name, crossing });
  }
  if (thing.kind === 'inGround') return message('record.names.named', { name: thing.name });
  if (thing.kind === 'crossing' || thing.kind === 'earthField') return nameOf(thing, project);
  if (thing.kind === 'photo') {
    const { caption, fileName } = thing;
    return caption === ''
      ? message('record.names.photo', { fileName })
      : message('record.names.captioned', { caption });
  }
  if (thing.kind === 'reading' || thing.kind === 'earthTest') {
    return message('record.names.ofDay', { kind: thing.kind, day: thing.date.slice(0, 10) });
  }
  return message('things.called', refTo(thing));
}

/** "S4 moved 3.20 m; normally closed, now open." */
export function changeSinceInWords({ name, what, movedM, changes }: ChangeSince): Message {
  if (what === 'new' || what === 'gone') return message(`record.since.${what}`, { name });
  return message('record.since.changed', { name, built: what === 'built', movedM, changes });
}
