import { describe, expect, it } from 'vitest';
import { splitTyped, typedBearingDeg, typedLengthM } from '../../../renderer/map/interaction/typedMeasures.ts';

describe('typed lengths', () => {
  it.each([
    ['125', 'metric', 125],
    [' 125.5 m', 'metric', 125.5],
    ['12,5', 'metric', 12.5],
    ['.5', 'metric', 0.5],
    ['0.4km', 'metric', 400],
    ['100', 'imperial', 30.48],
    ['100 m', 'imperial', 100],
    ['1 mi', 'metric', 1609.344],
    ["30'", 'metric', 9.144],
  ] as const)('%s on a %s screen is %d m', (text, units, lengthM) => {
    expect(typedLengthM(text, units)).toBeCloseTo(lengthM, 9);
  });

  it('takes no text for no length', () => expect(typedLengthM('  ', 'metric')).toBeNull());

  it.each(['abc', '12 furlongs', '-5', '1e3', '0', '12 34', '300 km'])('says what is wrong with %s', (text) => {
    expect(typedLengthM(text, 'metric')).toEqual({ problem: expect.stringMatching(/\S+/) });
  });
});

describe('typed bearings', () => {
  it.each([
    ['92.5', 92.5],
    ['092.5°', 92.5],
    ['0', 0],
    ['360', 0],
    ['12,5', 12.5],
  ] as const)('%s is %d degrees', (text, bearing) => expect(typedBearingDeg(text)).toBe(bearing));

  it.each(['361', '-1', 'north', '1 2'])('says what is wrong with %s', (text) => {
    expect(typedBearingDeg(text)).toEqual({ problem: expect.stringContaining(text) });
  });

  it('takes a length and a bearing from one text', () => {
    expect(splitTyped('125 @ 092.5')).toEqual(['125 ', ' 092.5']);
    expect(splitTyped('125')).toEqual(['125', null]);
  });
});
