import { nearestOnPolyline } from '../geometry/polyline.ts';
import type { Xy } from '../geometry/types.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import { largestOf } from '../model/extremes.ts';
import type { Project } from '../model/project.ts';
import type { BuildableThing, BuiltMark } from '../model/recordThings.ts';
import type { Survey } from '../survey/types.ts';
import type { Message } from '../words/message.ts';
import { type ChangedField, changedFields } from './changedFields.ts';
import { nameOf, placesOf } from './places.ts';

/** Nearer than this, a thing stands where it was planned: what a tape over rough ground can tell. */
export const samePlaceM = 0.05;

/** How something that was planned was really built. */
export interface BuiltDifference {
  readonly mark: BuiltMark;
  readonly thing: BuildableThing;
  readonly name: Message;
  readonly changes: readonly ChangedField[];
  /** How far it stands from where it was planned, at most; 0 within `samePlaceM`. */
  readonly movedM: number;
  /** Where it was planned, in the working plane. */
  readonly plannedXy: readonly Xy[];
}

/** Everything that was built otherwise than planned. */
export function differencesFromPlan(project: Project, survey: Survey): BuiltDifference[] {
  return [...project.builtMark.values()].flatMap((mark) => {
    const difference = differenceOf(mark, project, survey);
    return difference && (difference.movedM > 0 || difference.changes.length > 0) ? [difference] : [];
  });
}

/** A built thing beside its plan; null where there was none, or the thing is gone or counts as planned again. */
export function differenceOf(mark: BuiltMark, project: Project, survey: Survey): BuiltDifference | null {
  const thing = project[mark.thingKind].get(mark.thingId) as BuildableThing | undefined;
  if (thing?.status !== 'built' || !mark.planned) return null;
  const plannedXy = mark.planned.places.map(survey.plane.toXy);
  const nowXy = placesOf(thing, project, survey).map(survey.plane.toXy);
  const movedM = apartM(plannedXy, nowXy);
  return {
    mark,
    thing,
    name: nameOf(thing, project),
    changes: changedFields(mark.planned.thing, thing, project),
    movedM: movedM > samePlaceM ? movedM : 0,
    plannedXy,
  };
}

/** The most that any vertex of either path stands off the other path. */
export function apartM(a: readonly Xy[], b: readonly Xy[]): number {
  if (a.length === 0 || b.length === 0) return 0;
  const off = (from: readonly Xy[], to: readonly Xy[]) =>
    from.map((xy) => (to.length === 1 ? xyDistanceM(xy, to[0]!) : nearestOnPolyline(xy, to)!.distanceM));
  return Math.max(largestOf(off(a, b)), largestOf(off(b, a)));
}
