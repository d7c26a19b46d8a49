import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { constrainBearing, lengthAlong } from '../../../renderer/map/interaction/constrain.ts';

describe('bearings held by Shift', () => {
  it('holds to every 15 degrees from north', () => {
    expect(constrainBearing(7.4, null)).toBe(0);
    expect(constrainBearing(7.6, null)).toBe(15);
    expect(constrainBearing(356, null)).toBe(0);
    expect(constrainBearing(181, null)).toBe(180);
  });

  it('holds to steps from the segment before where those are nearer', () => {
    expect(constrainBearing(98, 10)).toBe(100);
    expect(constrainBearing(91, 10)).toBe(90);
    expect(constrainBearing(1, 350)).toBe(0);
    expect(constrainBearing(6, 350)).toBe(5);
  });

  it('never turns the pointer by more than half a step', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359.999, noNaN: true }),
        fc.double({ min: 0, max: 359.999, noNaN: true }),
        (b, before) => {
          const held = constrainBearing(b, before);
          const off = Math.abs(((held - b + 540) % 360) - 180);
          expect(off).toBeLessThanOrEqual(7.5 + 1e-9);
          expect(held).toBeGreaterThanOrEqual(0);
          expect(held).toBeLessThan(360);
        },
      ),
      { seed: 11 },
    );
  });

  it('keeps the share of the length that lies along the held bearing, and never goes backwards', () => {
    expect(lengthAlong(10, 60, 0)).toBeCloseTo(5, 12);
    expect(lengthAlong(10, 90, 90)).toBe(10);
    expect(lengthAlong(10, 180, 0)).toBe(0);
  });
});
