import { describe, expect, it } from 'vitest';
import { byName, compareNames, counted, inOrder, listed, plural } from '../../../core/words/text.ts';

describe('words', () => {
  it.each([
    [0, 'switches'],
    [1, 'switch'],
    [1.5, 'switches'],
    [2, 'switches'],
    [21, 'switches'],
  ])('%s takes the form "%s"', (count, form) => {
    expect(plural(count, { one: 'switch', other: 'switches' })).toBe(form);
  });

  it('counts things with their word', () => {
    expect([0, 1, 1204].map((count) => counted(count, 'run'))).toEqual(['0 runs', '1 run', '1,204 runs']);
    expect(counted(12, 'switch', 'switches')).toBe('12 switches');
  });

  it.each([
    [[], ''],
    [['S1'], 'S1'],
    [['S1', 'S2'], 'S1 and S2'],
    [['S1', 'S2', 'S3'], 'S1, S2 and S3'],
    [['S1', 'S2', 'S3', 'S4', 'S5'], 'S1, S2 and 3 more'],
  ])('lists %j as "%s" where at most three are named', (names, text) => {
    expect(listed(names, 3)).toBe(text);
  });

  it('lists all names where no limit is set', () => {
    expect(listed(['a', 'b', 'c', 'd', 'e', 'f'])).toBe('a, b, c, d, e and f');
  });

  it('orders names as people count them', () => {
    expect(inOrder(['G10', 'G2', 'g1'])).toEqual(['g1', 'G2', 'G10']);
    expect([{ name: 'S10' }, { name: 'S2' }].sort(byName).map(({ name }) => name)).toEqual(['S2', 'S10']);
    expect(compareNames('F2', 'F10')).toBeLessThan(0);
  });
});
