import { expect, it } from 'vitest';
import { withinInShort } from '../../../core/locate/certaintyWords.ts';

it('tells an assumed reach from a measured one', () => {
  const told = (['measured', 'ambiguous', 'partly', 'contradictory', 'drawn'] as const).map((basis) =>
    withinInShort({ basis, withinM: 2 }, 'metric'),
  );
  expect(told).toEqual(['2.00 m', '2.00 m', '2.00 m partly assumed', '2.00 m assumed', '2.00 m assumed']);
});
