import { describe, expect, it } from 'vitest';
import { placePost } from '../../../core/model/edits/placePost.ts';
import { setRule } from '../../../core/model/edits/setRule.ts';
import { splitLine } from '../../../core/model/edits/splitLine.ts';
import type { Project } from '../../../core/model/project.ts';
import { switchCandidates } from '../../../core/survey/candidates.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { at, drawing, energiser, line, lineSwitch } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';

/** Label and word of every place that the user has had a word on. */
const words = (project: Project) =>
  switchCandidates(project, surveyOf(project)).flatMap(({ label, rule }) =>
    rule ? [`${inEnglish(label)}: ${rule}`] : [],
  );

describe('the word on a corner', () => {
  const fence = drawing(
    energiser('E', [0, 0]),
    line('L', [
      [0, 0],
      [1500, 0],
      [1500, 3000],
    ]),
  );
  const never = setRule({ key: 'strainer:L:1', rule: 'forbidden' })(fence);

  it('holds for a post that is put there, and can be changed and taken back under it', () => {
    const withPost = placePost({ at: at([1500, 0]), name: 'P' }, countingIds())(never);
    expect(words(withPost)).toEqual(['P on L: forbidden']);
    const { key } = switchCandidates(withPost, surveyOf(withPost)).find(({ rule }) => rule)!;
    expect(words(setRule({ key, rule: 'forced' })(withPost))).toEqual(['P on L: forced']);
    expect(words(setRule({ key, rule: null })(withPost))).toEqual([]);
  });

  it('holds beside a post that is near, and on a stretch that became short', () => {
    const near = placePost({ at: at([1480, 0]), name: 'P' }, countingIds())(never);
    expect(words(near)).toEqual(['corner of L, 1.50 km from its start: forbidden']);
    const first = splitLine({ lineId: 'L', atM: 2000 }, countingIds())(never);
    const cut = splitLine({ lineId: 'L', atM: 1000 }, countingIds(5))(first);
    const branches = [1000, 2000].map((atM, i) =>
      line(`B${i}`, [atM === 1000 ? [1000, 0] : [1500, 500], atM === 1000 ? [1000, -300] : [1800, 500]]),
    );
    const branched = { ...cut, fenceLine: new Map([...cut.fenceLine, ...branches.map((b) => [b.id, b] as const)]) };
    expect(words(branched)).toEqual([expect.stringMatching(/^corner of .*: forbidden$/)]);
  });
});

it('the word on a drawn switch holds where a post comes to stand by it', () => {
  const fence = drawing(
    energiser('E', [0, 0]),
    line('L', [
      [0, 0],
      [3000, 0],
    ]),
    lineSwitch('S', 'L', 1500),
  );
  const always = setRule({ key: 'switch:S', rule: 'forced' })(fence);
  const withPost = placePost({ at: at([1500, 0]), name: 'P' }, countingIds())(always);
  expect(words(withPost)).toEqual(['P on L: forced']);
});
