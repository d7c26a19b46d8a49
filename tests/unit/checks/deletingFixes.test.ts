import { expect, it } from 'vitest';
import { allFindings } from '../../../core/checks/allFindings.ts';
import { touchedBy } from '../../../core/locate/inGround/touched.ts';
import { difference } from '../../../core/model/difference.ts';
import { put } from '../../../core/model/project.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';
import { recordedDrawing } from '../../support/recordedDrawing.ts';

it('a fix that takes something built away says so, so that it is asked about first', () => {
  const before = recordedDrawing();
  const loose = put(before, { ...before.gateway.get('G1')!, lineId: 'gone' });
  const fixes = allFindings(loose, surveyOf(loose)).flatMap((finding) => finding.fixes);
  const fix = fixes.find(({ label }) => inEnglish(label) === 'Delete the gateway')!;
  const after = fix.edit(loose, countingIds());
  const { asked } = touchedBy(loose, after, difference(loose, after), { deleting: fix.deletes ?? false });
  const whats = asked.map(({ what }) => what);
  expect(whats).toContain('builtGone');
  expect(whats).toContain('recordGone');
});
