import { expect, test } from 'vitest';
import { callsBy } from '../../../core/api/calls.ts';
import type { Host } from '../../../core/api/projectApi.ts';
import { type Result, succeed } from '../../../core/api/result.ts';
import { dispatch } from '../../../electron/host/dispatch.ts';

/** A host that answers every call alike. */
function hostThatAnswers(answer: Result<unknown>): Host {
  const ask = () => Promise.resolve(answer);
  return { project: { ...callsBy('project', ask), subscribe: () => () => {} }, desktop: callsBy('desktop', ask) };
}

const facts = {
  path: '/maps/farm.mbtiles',
  name: 'Farm',
  fileName: 'farm.mbtiles',
  minZoom: 3,
  maxZoom: 17,
  bounds: [170, -40, 171, -39],
  attribution: 'Invented',
};
const asked = { path: '/maps/farm.mbtiles', chosen: true };

test('what a map file of a stranger says of itself is checked before a window sees it', async () => {
  const answer = (value: unknown) => dispatch(hostThatAnswers(succeed(value)), 'project', 'openTileFile', asked);
  expect(await answer(facts)).toEqual(succeed(facts));
  expect(await answer({ ...facts, maxZoom: 1e9 })).toMatchObject({ ok: false, problem: { code: 'damaged' } });
  expect(await answer({ ...facts, bounds: [170, -40] })).toMatchObject({ ok: false, problem: { code: 'damaged' } });
});

test.each([
  ['project', 'toString'],
  ['project', 'subscribe'],
  ['constructor', 'name'],
  ['', ''],
])('%s/%s is no call', async (half, name) => {
  const answer = await dispatch(hostThatAnswers(succeed(null)), half, name, undefined);
  expect(answer).toMatchObject({ ok: false, problem: { code: 'not-valid' } });
});
