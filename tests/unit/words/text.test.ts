import { describe, expect, it } from 'vitest';
import { english } from '../../../core/words/en.ts';
import { figures } from '../../../core/words/figures.ts';
import { byName, compareNames, inOrder } from '../../../core/words/text.ts';

const f = figures('metric', english);

describe('words', () => {
  it.each([
    [0, 'switches'],
    [1, 'switch'],
    [1.5, 'switches'],
    [2, 'switches'],
    [21, 'switches'],
  ])('%s takes the form "%s"', (count, form) => {
    expect(f.plural(count, { one: 'switch', other: 'switches' })).toBe(form);
  });

  it.each([
    [[], ''],
    [['S1'], 'S1'],
    [['S1', 'S2'], 'S1 and S2'],
    [['S1', 'S2', 'S3'], 'S1, S2 and S3'],
    [['S1', 'S2', 'S3', 'S4', 'S5'], 'S1, S2 and 3 more'],
  ])('lists %j as "%s" where at most three are named', (names, text) => {
    expect(f.list(names, 3)).toBe(text);
  });

  it('lists all names where no limit is set', () => {
    expect(f.list(['a', 'b', 'c', 'd', 'e', 'f'])).toBe('a, b, c, d, e and f');
  });

  it('orders names as people count them', () => {
    expect(inOrder(['G10', 'G2', 'g1'])).toEqual(['g1', 'G2', 'G10']);
    expect([{ name: 'S10' }, { name: 'S2' }].sort(byName).map(({ name }) => name)).toEqual(['S2', 'S10']);
    expect(compareNames('F2', 'F10')).toBeLessThan(0);
  });
});
