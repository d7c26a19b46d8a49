import { type ImportChoices, usualChoices } from '../../../core/exchange/intake/importFeatures.ts';
import type { Preview, PreviewFeature } from '../../../core/exchange/preview/types.ts';

/** What is done to lines as they are taken in. */
export type Treatment = Pick<ImportChoices, 'simplifyM' | 'snapEndsM' | 'keepHeights'>;

/** A receiver on a quad bike strews points every few metres, and is out by a few: common practice, no source. */
const forTracks = { simplifyM: 2, snapEndsM: 5 } as const;

/** A line with so many points so near each other was written by a receiver, or by a program that draws curves finely. */
const dense = { fewestPoints: 200, spacingM: 2, simplifyM: 0.5 } as const;

/** What suits a file until the user says otherwise. */
export function treatmentFor({ features }: Preview): Treatment {
  const { simplifyM, snapEndsM, keepHeights } = usualChoices;
  if (features.some(({ track }) => track)) return { ...forTracks, keepHeights };
  return { simplifyM: features.some(isDense) ? dense.simplifyM : simplifyM, snapEndsM, keepHeights };
}

/** Longest of what a degree of latitude is, metres. */
const degreeM = 111_700;

function isDense({ ours, shape, path }: PreviewFeature): boolean {
  if (ours || (shape !== 'line' && shape !== 'outline') || path.length < dense.fewestPoints) return false;
  const squeeze = Math.cos((path[0]![1] * Math.PI) / 180);
  let lengthM = 0;
  for (let i = 1; i < path.length; i++) {
    const [east, north] = [path[i]![0] - path[i - 1]![0], path[i]![1] - path[i - 1]![1]];
    lengthM += degreeM * Math.hypot(east * squeeze, north);
  }
  return lengthM <= dense.spacingM * path.length;
}
