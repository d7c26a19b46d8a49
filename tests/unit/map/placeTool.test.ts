import { expect, it } from 'vitest';
import { switchCandidates } from '../../../core/survey/candidates.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { toolKeys, toolsFor, toolsOf, type Workspace } from '../../../renderer/map/mapTypes.ts';
import { createPlaceTool } from '../../../renderer/map/tools/placeTool.ts';
import { exampleContext, exampleScene, pointer } from './support.ts';

it('marks a place along a live fence, which the plan may then use', () => {
  const scene = exampleScene();
  const { context, made, refused } = exampleContext(scene, { workspace: 'divide' });
  const tool = createPlaceTool(context);
  tool.click(pointer(101, 150));
  expect(refused).toEqual([]);
  const after = made[0]!.apply(scene.project);
  expect([...after.switchCandidate.values()]).toMatchObject([
    { lineId: 'F2', atM: expect.closeTo(150, 1) as number, cost: null },
  ]);
  expect(switchCandidates(after, surveyOf(after)).map(({ why }) => why)).toContain('added');
});

it('says where to point instead', () => {
  const { context, made, refused } = exampleContext(exampleScene(), { workspace: 'divide' });
  createPlaceTool(context).click(pointer(50, 100));
  expect(made).toEqual([]);
  expect(refused).toEqual(['Point at a live fence line: elsewhere there is nothing to cut off.']);
});

it('the list of keys has every tool of every workspace', () => {
  const listed = toolKeys();
  for (const spec of (Object.keys(toolsOf) as Workspace[]).flatMap((workspace) => toolsFor({ workspace }))) {
    expect(listed.some(({ key, does }) => key === spec.key && does.startsWith(spec.label))).toBe(true);
  }
  expect(listed.find(({ does }) => does.startsWith('Hole'))).toEqual({ key: 'H', does: 'Hole, in Find' });
});
