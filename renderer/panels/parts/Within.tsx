import './certainty.css';
import type { Certainty } from '../../../core/locate/certainty.ts';
import { assumedInShort } from '../../../core/locate/certaintyWords.ts';
import { useFigures } from '../../state/useFigures.ts';

/** How near to the line that is shown, for a narrow column; and below it where that is assumed. */
export function Within({ basis, withinM }: Certainty) {
  const f = useFigures();
  const assumed = assumedInShort(basis);
  return (
    <>
      {f.tape(withinM)}
      {assumed ? <small className="within-assumed">{f.say(assumed)}</small> : null}
    </>
  );
}
