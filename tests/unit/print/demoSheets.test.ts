import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { leafItems } from '../../../core/drawing/displayList.ts';
import { quadsMeet } from '../../../core/drawing/labels/quads.ts';
import { textBox, textCorners } from '../../../core/drawing/words.ts';
import { projectOf } from '../../../core/model/project.ts';
import type { Thing } from '../../../core/model/things.ts';
import { layoutSheets } from '../../../core/sheets/layoutSheets.ts';
import { suggestedScales } from '../../../core/sheets/scales.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { testSheets } from '../../../core/survey/testSheets.ts';
import { figures } from '../../../core/words/figures.ts';
import { typefaces } from '../../../electron/print/typefaces.ts';
import { baseOptions } from '../sheets/inventedProperty.ts';

const demoFile = new URL('../../../assets/demo/demo-property.json', import.meta.url);
const project = projectOf(JSON.parse(readFileSync(demoFile, 'utf8')) as Thing[]);
const survey = surveyOf(project);
const { measure } = typefaces();

describe.each([
  ['A4', 'landscape'],
  ['A4', 'portrait'],
  ['A3', 'landscape'],
  ['A3', 'portrait'],
] as const)('the demo property in its own typeface on %s %s', (paper, orientation) => {
  const choices = suggestedScales(survey, project, { paper, orientation });

  it.each(choices.slice(-3).map(({ scaleDenominator }) => scaleDenominator))(
    'at 1:%i has no word over another and none off the page',
    (scaleDenominator) => {
      const options = { ...baseOptions, paper, orientation, scaleDenominator };
      const f = figures('metric');
      const pages = layoutSheets({ project, survey, testSheets: testSheets(project, survey), options, f, measure });
      for (const { title, widthMm, heightMm, items } of pages) {
        const texts = [...leafItems(items)].filter((item) => item.kind === 'text');
        const quads = texts.map((item) => textCorners(item, measure));
        texts.forEach((item, i) => {
          const [left, top, right, bottom] = textBox(item, measure);
          expect(left >= 0 && top >= 0 && right <= widthMm && bottom <= heightMm, `${title}: ${item.text}`).toBe(true);
          for (let k = i + 1; k < texts.length; k++) {
            expect(quadsMeet(quads[i]!, quads[k]!) ? `${title}: ${item.text} over ${texts[k]!.text}` : '').toBe('');
          }
        });
      }
    },
  );
});
