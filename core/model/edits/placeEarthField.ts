import { message } from '../../words/message.ts';
import { newEarthField } from '../defaults.ts';
import { put } from '../project.ts';
import { refTo } from '../refTo.ts';
import { type Edit, firstRefusal, guarded, type NewId, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';

export interface PlaceEarthField {
  readonly energiserId: string;
}

/** Gives an energiser that has none its earth stakes, where it stands. */
export function placeEarthField(wanted: PlaceEarthField, newId: NewId): Edit {
  return guarded(whyNotPlaceEarthField(wanted), (project) => {
    const { id, at } = found(project, 'energiser', wanted.energiserId);
    return put(project, newEarthField(newId('earthField'), id, at));
  });
}

/** `notFound`, `hasOne` (its stakes are drawn already). */
function whyNotPlaceEarthField({ energiserId }: PlaceEarthField): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'energiser', energiserId),
      () => {
        if ([...project.earthField.values()].every((field) => field.energiserId !== energiserId)) return null;
        const thing = refTo(found(project, 'energiser', energiserId));
        return { code: 'hasOne', message: message('edits.hasEarthStakes', { thing }) };
      },
    );
}
