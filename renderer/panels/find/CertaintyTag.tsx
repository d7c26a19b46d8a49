import type { Certainty } from '../../../core/locate/certainty.ts';

const words = { measured: 'Measured', partly: 'Partly', drawn: 'Only drawn' } as const;

/** How surely something is known: a full rim for measured, a broken one for drawn, and the word. */
export function CertaintyTag({ certainty: { basis } }: { readonly certainty: Pick<Certainty, 'basis'> }) {
  return <span className={`certainty ${basis}`}>{words[basis]}</span>;
}
