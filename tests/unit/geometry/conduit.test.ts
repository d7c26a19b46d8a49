import { describe, expect, it } from 'vitest';
import { earthCableLengthM, liveCableLengthM, pipeLengthM } from '../../../core/geometry/conduit.ts';

/** Worked by hand: a straight trench of 4 m, 0.3 m deep, risers 0.9 m high. */
const pipe = { trenchM: 4, depthM: 0.3, riserHeightM: 0.9, allowanceM: 0.2 };

describe('pipe and cable of a crossing', () => {
  it('pipe: 4 + 2 (0.3 + 0.9) + 0.2 = 6.6 m', () => expect(pipeLengthM(pipe)).toBeCloseTo(6.6, 12));
  it('live cable: two tails of 1 m more', () => expect(liveCableLengthM(pipe, 1)).toBeCloseTo(8.6, 12));
  it('earth cable: 4 + 2 (0.3 + 0.4) = 5.4 m', () => expect(earthCableLengthM(pipe, 0.4)).toBeCloseTo(5.4, 12));
});
