import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { useOrderRoom, workOutFigures, workOutOrder } from '../../../renderer/work/order.ts';
import { drawing } from '../../support/drawings.ts';
import { FakeWorker } from '../../support/fakeWorker.ts';

beforeEach(() => {
  FakeWorker.made = [];
  vi.stubGlobal('Worker', FakeWorker);
});

afterEach(() => vi.unstubAllGlobals());

it('a worker of the order that breaks is told, and the next question starts another', async () => {
  workOutOrder(drawing());
  const figures = workOutFigures(drawing());
  expect(useOrderRoom.getState()).toMatchObject({ busy: true, failed: null });
  FakeWorker.made[0]!.breaks('out of memory');
  expect(useOrderRoom.getState()).toMatchObject({ busy: false, failed: 'out of memory' });
  expect(await figures).toBeNull();
  workOutOrder(drawing());
  expect(FakeWorker.made).toHaveLength(2);
  expect(useOrderRoom.getState()).toMatchObject({ busy: true, failed: null });
  FakeWorker.made[1]!.dispatchEvent(new Event('messageerror'));
  expect(useOrderRoom.getState()).toMatchObject({ busy: false, failed: 'the answer could not be read' });
});
