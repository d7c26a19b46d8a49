import type { Edit } from '../../model/edits/support/edit.ts';
import { found } from '../../model/edits/support/find.ts';
import { putAll, removeAll } from '../../model/project.ts';
import { builtMarkId } from '../../model/recordDefaults.ts';
import type { BuildableKind, BuildableThing, BuiltMark } from '../../model/recordThings.ts';
import type { Survey } from '../../survey/types.ts';
import { placesOf } from '../places.ts';

export interface BuildableRef {
  readonly kind: BuildableKind;
  readonly id: string;
}

export interface BuiltWords {
  /** ISO 8601 date, or null where it is not known. */
  readonly date: string | null;
  readonly by: string;
}

/**
 * Marks things built and keeps each as it was planned beside it; from then on its own values are the real ones. What
 * is marked already keeps its plan and gets the new date and name. Things that are gone are refused (`notFound`).
 */
export function markBuilt(refs: readonly BuildableRef[], { date, by }: BuiltWords, survey: Survey): Edit {
  return (project) => {
    const changed = refs.flatMap(({ kind, id }): (BuildableThing | BuiltMark)[] => {
      const thing = found(project, kind, id) as BuildableThing;
      const markId = builtMarkId(kind, id);
      const known = project.builtMark.get(markId);
      const planned =
        known?.planned ?? (thing.status === 'planned' ? { thing, places: placesOf(thing, project, survey) } : null);
      const mark: BuiltMark = {
        kind: 'builtMark',
        id: markId,
        thingKind: kind,
        thingId: id,
        date,
        by,
        note: known?.note ?? '',
        planned,
      };
      return [mark, thing.status === 'built' ? thing : { ...thing, status: 'built' }];
    });
    return putAll(
      project,
      changed.filter((thing) => project[thing.kind].get(thing.id) !== thing),
    );
  };
}

/** Takes the mark off: the thing counts as planned again, with the values that it has. */
export function markPlanned(refs: readonly BuildableRef[]): Edit {
  return (project) => {
    const things = refs.map(({ kind, id }) => found(project, kind, id) as BuildableThing);
    const marks = refs.flatMap(({ kind, id }) => project.builtMark.get(builtMarkId(kind, id)) ?? []);
    const planned = things.filter(({ status }) => status !== 'planned');
    return removeAll(
      putAll(
        project,
        planned.map((thing) => ({ ...thing, status: 'planned' as const })),
      ),
      marks,
    );
  };
}
