import type { ImportChoices } from '../../../core/exchange/intake/importFeatures.ts';
import { usualChoices } from '../../../core/exchange/intake/importFeatures.ts';
import type { Preview } from '../../../core/exchange/preview/types.ts';

/** What is done to lines as they are taken in. */
export type Treatment = Pick<ImportChoices, 'simplifyM' | 'snapEndsM' | 'keepHeights'>;

/** A receiver on a quad bike strews points every few metres, and is out by a few: common practice, no source. */
const forTracks = { simplifyM: 2, snapEndsM: 5 } as const;

/** What suits a file until the user says otherwise. */
export function treatmentFor({ features }: Preview): Treatment {
  const { simplifyM, snapEndsM, keepHeights } = usualChoices;
  const tracks = features.some(({ track }) => track);
  return tracks ? { ...forTracks, keepHeights } : { simplifyM, snapEndsM, keepHeights };
}
