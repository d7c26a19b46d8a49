import { expect, it } from 'vitest';
import { withinInShort } from '../../../core/locate/certaintyWords.ts';
import { inEnglish } from '../../support/english.ts';

it('tells an assumed reach from a measured one', () => {
  const told = (['measured', 'ambiguous', 'partly', 'contradictory', 'drawn'] as const).map((basis) =>
    inEnglish(withinInShort({ basis, withinM: 2 })),
  );
  expect(told).toEqual(['2.00 m', '2.00 m', '2.00 m partly assumed', '2.00 m assumed', '2.00 m assumed']);
});
