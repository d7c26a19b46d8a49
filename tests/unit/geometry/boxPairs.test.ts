import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Box, boxesMeet, boxPairs, growBox } from '../../../core/geometry/box.ts';

const coordinate = fc.integer({ min: -200, max: 200 });
const box = fc.record({ x: coordinate, y: coordinate, wide: fc.nat(60), high: fc.nat(60) });

it('finds each pair of near boxes once, as looking at all pairs does', () => {
  fc.assert(
    fc.property(fc.array(box, { maxLength: 90 }), fc.constantFrom(0, 0.5, 7), (parts, marginM) => {
      const boxes = parts.map(({ x, y, wide, high }): Box => [x, y, x + wide, y + high]);
      const expected = boxes.flatMap((one, i) =>
        boxes.flatMap((other, j) => (i < j && boxesMeet(growBox(one, marginM), other) ? [`${i} ${j}`] : [])),
      );
      const found = boxPairs(Float64Array.from(boxes.flat()), marginM);
      const pairs = Array.from({ length: found.length / 2 }, (_, i) => `${found[2 * i]} ${found[2 * i + 1]}`);
      expect(pairs.toSorted()).toEqual(expected.toSorted());
    }),
    { seed: 11, numRuns: 300 },
  );
});
