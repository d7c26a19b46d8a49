import './certainty.css';
import type { Certainty } from '../../../core/locate/certainty.ts';
import { assumedInShort } from '../../../core/locate/certaintyWords.ts';
import { formatTape } from '../../../core/words/numbers/write.ts';
import { useUnits } from '../../state/useUnits.ts';

/** How near to the line that is shown, for a narrow column; and below it where that is assumed. */
export function Within({ basis, withinM }: Certainty) {
  const assumed = assumedInShort(basis);
  return (
    <>
      {formatTape(withinM, useUnits())}
      {assumed === '' ? null : <small className="within-assumed">{assumed}</small>}
    </>
  );
}
