import { allThings } from '../../model/project.ts';
import { refTo } from '../../model/refTo.ts';
import type { LonLat } from '../../model/things.ts';
import { isPlaceOnEarth } from '../../shapes/workingPlane.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** A vertex that is no place on earth; what has one is left out of everything that is computed. */
export const coordinatesOutOfRange: Check = ({ project }) => {
  const findings = [];
  for (const thing of allThings(project)) {
    const points: readonly LonLat[] = 'path' in thing ? thing.path : 'at' in thing ? [thing.at] : [];
    const wrong = points.findIndex((point) => !isPlaceOnEarth(point));
    if (wrong < 0) continue;
    const [lon, lat] = points[wrong]!;
    findings.push(
      finding('coordinatesOutOfRange', 'error', [thing.id], {
        message: message('checks.coordinatesOutOfRange.message', {
          thing: refTo(thing),
          point: points.length > 1 ? wrong + 1 : null,
          lon: `${lon}`,
          lat: `${lat}`,
        }),
        remedy: message('checks.coordinatesOutOfRange.remedy', { thing: refTo(thing) }),
        at: points.find(isPlaceOnEarth) ?? null,
      }),
    );
  }
  return findings;
};
