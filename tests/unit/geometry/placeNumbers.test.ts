import fc from 'fast-check';
import { expect, it } from 'vitest';
import { createPlaceNumbers } from '../../../core/geometry/placeNumbers.ts';

const coordinate = fc.oneof(fc.constantFrom(0, -0, 1e-300, 5, -5), fc.double({ noNaN: true }));

it('gives the same number to the same coordinates and to no others', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(coordinate, coordinate), { maxLength: 200 }), (places) => {
      const known = new Map<string, number>();
      const { numberOf, places: kept } = createPlaceNumbers(places.length);
      for (const place of places) {
        // As text -0 is 0.
        const expected = known.get(String(place)) ?? known.size;
        known.set(String(place), expected);
        expect(numberOf(place)).toBe(expected);
        expect(String(kept[expected])).toBe(String(place));
      }
    }),
    { seed: 12, numRuns: 300 },
  );
});
