import { called, kindWords } from '../../model/edits/support/find.ts';
import { allThings } from '../../model/project.ts';
import type { LonLat } from '../../model/things.ts';
import { isPlaceOnEarth } from '../../shapes/workingPlane.ts';
import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

/** A vertex that is no place on earth; what has one is left out of everything that is computed. */
export const coordinatesOutOfRange: Check = ({ project }) => {
  const findings = [];
  for (const thing of allThings(project)) {
    const points: readonly LonLat[] = 'path' in thing ? thing.path : 'at' in thing ? [thing.at] : [];
    const wrong = points.findIndex((point) => !isPlaceOnEarth(point));
    if (wrong < 0) continue;
    const [lon, lat] = points[wrong]!;
    const which = points.length > 1 ? `point ${wrong + 1}` : 'its place';
    findings.push(
      finding('coordinatesOutOfRange', 'error', [thing.id], {
        message: `${headed(thing)}: ${which} is at longitude ${lon}, latitude ${lat}, which is no place on earth. It is left out of all figures.`,
        remedy: `Move that point, or delete ${called(thing)} and draw the ${kindWords[thing.kind]} again.`,
        at: points.find(isPlaceOnEarth) ?? null,
      }),
    );
  }
  return findings;
};
