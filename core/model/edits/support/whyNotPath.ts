import { earthAt } from '../../../geometry/earth.ts';
import { message, type ValuesOf } from '../../../words/message.ts';
import { type Project, propertyOf } from '../../project.ts';
import type { LonLat } from '../../things.ts';
import type { Refusal } from './edit.ts';
import { couldBeWithin, type Path, sameVertexM, withoutDoubles } from './path.ts';

/** The working plane holds its promise of 1 in 10,000 this far from its centre, with room to spare. */
const furthestM = 200_000;

/** Why a point can't be a place of this property. */
export function whyNotPoint(project: Project, at: LonLat): Refusal | null {
  const [lon, lat] = at;
  if (!Number.isFinite(lon) || !Number.isFinite(lat) || Math.abs(lon) > 180 || Math.abs(lat) > 90) {
    return {
      code: 'outOfRange',
      message: message('edits.places.notOnEarth', { lon: `${lon}`, lat: `${lat}` }),
    };
  }
  const { origin } = propertyOf(project);
  // A box of this half-width lies inside the circle; most points are in it, and need no measuring.
  if (couldBeWithin(origin, at, 0.7 * furthestM)) return null;
  const awayM = earthAt(origin).distanceM(origin, at);
  if (awayM <= furthestM) return null;
  return {
    code: 'tooFar',
    message: message('edits.places.tooFar', { awayM }),
  };
}

/** Why a path can't be drawn: too few points, no length, or a point that is no place of this property. */
export function whyNotPath(
  project: Project,
  path: Path,
  what: ValuesOf<'edits.places.tooFewPoints'>['what'],
): Refusal | null {
  for (const vertex of path) {
    const refusal = whyNotPoint(project, vertex);
    if (refusal) return refusal;
  }
  if (path.length < 2) return { code: 'tooFewPoints', message: message('edits.places.tooFewPoints', { what }) };
  if (withoutDoubles(project, path).length < 2) {
    return {
      code: 'noLength',
      message: message('edits.places.noLength', { what, withinM: sameVertexM }),
    };
  }
  return null;
}
