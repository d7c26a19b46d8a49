import { earthAt } from '../../geometry/earth.ts';
import { createLocalPlane } from '../../geometry/localPlane.ts';
import { kindsIn } from '../../kinds/allKinds.ts';
import { message } from '../../words/message.ts';
import { largestOf } from '../extremes.ts';
import { allThings, type Project, propertyOf, put } from '../project.ts';
import type { Kind, LonLat } from '../things.ts';
import type { Underlay } from '../underlayThings.ts';
import { whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type Refusal, type WhyNot } from './support/edit.ts';

/** A map or picture to be laid under the drawing, over those that lie there already. */
export type LayUnderlay = Omit<Underlay, 'kind' | 'rank'>;

/** Kinds that are not drawn, so that a property with only these has nothing that would move. */
export const notDrawn: ReadonlySet<Kind> = new Set(kindsIn('placeless'));

/**
 * Lays a map or picture under the drawing. One that has its place on earth gives it to a property that has nothing drawn and
 * no place of its own yet.
 */
export function layUnderlay(wanted: LayUnderlay): Edit {
  return guarded(whyNotLayUnderlay(wanted), (project) => {
    const rank = 1 + Math.max(0, largestOf([...project.underlay.values()].map((underlay) => underlay.rank)));
    const property = propertyOf(project);
    const middle = placeOf(wanted);
    const placed = property.placed || !middle ? project : put(project, { ...property, origin: middle, placed: true });
    return put(placed, { kind: 'underlay', ...wanted, rank });
  });
}

/** `notValid`, `notPlaced` (it has a place on earth, the drawing has none yet), `tooFar` (a picture). */
export function whyNotLayUnderlay(wanted: LayUnderlay): WhyNot {
  return (project) =>
    firstRefusal(
      () => {
        const { id: _, ...values } = wanted;
        return whyNotFields(project, 'underlay', null, values);
      },
      () => whyNotPlaced(project, wanted),
      () => whyNotNear(project, wanted),
    );
}

function whyNotPlaced(project: Project, wanted: LayUnderlay): Refusal | null {
  if (propertyOf(project).placed || !placeOf(wanted)) return null;
  if ([...allThings(project)].every(({ kind }) => notDrawn.has(kind))) return null;
  return { code: 'notPlaced', message: message('edits.underlays.notPlaced', { name: wanted.name }) };
}

/** A picture farther from the property than this was put there by a wrong coordinate system. */
const farM = 500_000;

function whyNotNear(project: Project, wanted: LayUnderlay): Refusal | null {
  const { placed, origin } = propertyOf(project);
  const middle = wanted.source.from === 'picture' ? placeOf(wanted) : null;
  if (!placed || !middle) return null;
  const offM = earthAt(origin).distanceM(middle, origin);
  if (offM <= farM) return null;
  return { code: 'tooFar', message: message('edits.underlays.tooFar', { name: wanted.name, offM }) };
}

/** The middle of a map that has a place on earth of its own. */
function placeOf({ source, placement }: LayUnderlay): LonLat | null {
  if (source.from === 'tileFile') {
    const [west, south, east, north] = source.bounds;
    return [(west + east) / 2, (south + north) / 2];
  }
  if (placement?.by !== 'coordinates') return null;
  const first = placement.at[0]!;
  const plane = createLocalPlane(first);
  const [x, y] = plane.toXy(placement.at.at(-1)!);
  return plane.toLonLat([x / 2, y / 2]);
}
