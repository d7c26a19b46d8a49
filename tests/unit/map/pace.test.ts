import { expect, it } from 'vitest';
import { createPace } from '../../../renderer/map/leaflet/pace.ts';

const afterFrames = (ms: number, count: number, pace = createPace()) => {
  for (let frame = 0; frame < count; frame++) pace.frameTook(ms);
  return pace;
};

it('gives longer steps while frames keep coming, up to a bound, and short ones where they do not', () => {
  expect(afterFrames(16.7, 1).stepMs()).toBeGreaterThan(createPace().stepMs());
  expect(afterFrames(16.7, 100).stepMs()).toBe(9);
  expect(afterFrames(60, 100).stepMs()).toBe(3);
  const recovering = afterFrames(60, 100);
  expect(afterFrames(16.7, 3, recovering).stepMs()).toBe(4.5);
});
