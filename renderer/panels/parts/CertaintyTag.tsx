import { standingInShort } from '../../../core/locate/certaintyWords.ts';
import type { CrossingAsBuilt } from '../../../core/locate/crossingAsBuilt.ts';
import { capital } from '../../../core/words/text.ts';
import { useFigures } from '../../state/useFigures.ts';

import './certainty.css';

/**
 * How surely a crossing is known: a full rim for measured, a broken one for what is not, a warning for tapes that leave it
 * open, a faint rim for what is only planned; and the words.
 */
export function CertaintyTag({ crossing }: { readonly crossing: Pick<CrossingAsBuilt, 'inGround' | 'certainty'> }) {
  const words = useFigures().say(standingInShort(crossing));
  const look = crossing.inGround ? crossing.certainty.basis : 'planned';
  return <span className={`certainty ${look}`}>{capital(words)}</span>;
}
