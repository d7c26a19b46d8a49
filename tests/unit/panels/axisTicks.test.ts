import { describe, expect, it } from 'vitest';
import { axisTicks } from '../../../renderer/panels/power/axisTicks.ts';

describe('figures along an axis', () => {
  it('are round and reach to the end', () => {
    expect(axisTicks(8.1, 5)).toEqual([0, 2, 4, 6, 8, 10]);
    expect(axisTicks(4.2, 5)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(axisTicks(1, 5)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
    expect(axisTicks(350, 5)).toEqual([0, 100, 200, 300, 400]);
  });

  it('are there for a fence without length as well', () => {
    expect(axisTicks(0, 5)).toEqual([0, 1]);
    expect(axisTicks(Number.NaN, 5)).toEqual([0, 1]);
  });
});
