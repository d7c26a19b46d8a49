import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcFigures, arcPath } from '../../../core/geometry/arc.ts';
import { destination, distanceM } from '../../../core/geometry/geodesic.ts';
import { createLocalPlane } from '../../../core/geometry/localPlane.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { type Posts, trenchUnder } from '../../../core/shapes/trench.ts';

/** Two posts so far apart, some way off the property's origin. */
function posts(latitude: number, awayM: number, toward: number, widthM: number, bearing: number): Posts {
  const plane = createLocalPlane([179.995, latitude]);
  const startPostAt = destination(plane.origin, toward, awayM);
  const endPostAt = destination(startPostAt, bearing, widthM);
  return { plane, startPostAt, endPostAt, startPost: plane.toXy(startPostAt), endPost: plane.toXy(endPostAt) };
}

const tenthOfMillimetre = 1e-4;

describe('the trench that Turf sets out under an opening', () => {
  it('is the arc of plane geometry at the gate to 0.1 mm, anywhere in a property 100 km across', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(0, -38, 50, 65, -80),
        fc.integer({ min: 0, max: 50_000 }),
        fc.integer({ min: 0, max: 359 }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        fc.integer({ min: 0, max: 359 }),
        fc.double({ min: -0.9, max: 0.9, noNaN: true }),
        (latitude, awayM, toward, widthM, bearing, share) => {
          const opening = posts(latitude, awayM, toward, widthM, bearing);
          const bowM = share * widthM;
          const path = trenchUnder(opening, bowM);
          const there = createLocalPlane(opening.startPostAt);
          const expected = arcPath([0, 0], there.toXy(opening.endPostAt), bowM);
          expect(path.length).toBe(expected.length);
          const lonLats = path.map(opening.plane.toLonLat);
          for (const [i, at] of lonLats.entries()) {
            expect(xyDistanceM(there.toXy(at), expected[i]!)).toBeLessThan(tenthOfMillimetre);
          }
          const middle = lonLats[(lonLats.length - 1) / 2];
          const { lengthM } = arcFigures(distanceM(opening.startPostAt, opening.endPostAt), bowM);
          const setOutM = lonLats.slice(1).reduce((sum, at, i) => sum + distanceM(lonLats[i]!, at), 0);
          expect(setOutM).toBeLessThanOrEqual(lengthM + tenthOfMillimetre);
          if (middle && Math.abs(share) > 0.01) expect(setOutM).toBeGreaterThan(0.95 * lengthM);
        },
      ),
    );
  });

  it('begins and ends at the posts, and runs straight between them without a bow', () => {
    const opening = posts(-38, 3000, 40, 4.2, 111);
    expect(trenchUnder(opening, 0)).toEqual([opening.startPost, opening.endPost]);
    for (const bowM of [0.8, -0.8, 1e-6, 3]) {
      const path = trenchUnder(opening, bowM);
      expect(path[0]).toBe(opening.startPost);
      expect(path.at(-1)).toBe(opening.endPost);
    }
  });

  it('bows to the left of the way from start to end where the bow is positive', () => {
    const plane = createLocalPlane([10, 50]);
    const [startPostAt, endPostAt] = [plane.origin, destination(plane.origin, 0, 4)];
    const opening = {
      plane,
      startPostAt,
      endPostAt,
      startPost: plane.toXy(startPostAt),
      endPost: plane.toXy(endPostAt),
    };
    for (const bowM of [0.7, -0.7]) {
      const path = trenchUnder(opening, bowM);
      const [x, y] = path[(path.length - 1) / 2]!;
      expect(x).toBeCloseTo(-bowM, 5);
      expect(y).toBeCloseTo(2, 5);
    }
  });

  it('keeps one point where both posts stand at one place', () => {
    const opening = posts(20, 100, 0, 0, 0);
    expect(trenchUnder(opening, 0)).toEqual([opening.startPost, opening.endPost]);
  });
});
