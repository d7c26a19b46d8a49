import { expect, it } from 'vitest';
import { moveGateway } from '../../../core/model/edits/moveGateway.ts';
import type { Project } from '../../../core/model/project.ts';
import { useApp } from '../../../renderer/state/appState.ts';
import { asGroundSays } from '../../../renderer/state/groundQuestion.ts';
import { recordedDrawing } from '../../support/recordedDrawing.ts';

/** Makes an edit as a step of one movement; answers what was asked with `answer`, and tells whether it was. */
async function step(before: Project, edited: Project, answer: 'stays' | 'takenOut', mergeKey: string | null = 'nudge') {
  const making = asGroundSays(before, edited, mergeKey === null ? {} : { mergeKey });
  await Promise.resolve();
  const asked = useApp.getState().groundQuestion;
  asked?.answer(answer);
  return { asked: asked !== null, after: (await making)! };
}

it('an answer holds for a movement in many steps, and for nothing that was not asked about', async () => {
  const before = recordedDrawing();
  const slid = (project: Project, gatewayId: string, atM: number) => moveGateway({ gatewayId, atM })(project);
  expect((await step(before, slid(before, 'G1', 50.5), 'stays', null)).asked).toBe(true);
  const first = await step(before, slid(before, 'G1', 50.5), 'stays');
  expect(first.asked).toBe(true);
  const second = await step(first.after, slid(first.after, 'G1', 51), 'takenOut');
  expect(second.asked).toBe(false);
  const other = await step(second.after, slid(second.after, 'G2', 101), 'stays');
  expect(other.asked).toBe(true);
});
