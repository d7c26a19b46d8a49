import { letters } from '../drawing/style.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { Survey } from '../survey/types.ts';
import { plainWords } from '../words/figures.ts';
import { areaUnit } from '../words/numbers/units.ts';
import { fixed, type Units } from '../words/numbers/write.ts';
import { words } from './flow/block.ts';
import { type Column, type Table, tableBlocks } from './flow/table.ts';
import { type TextPagesInput, textPages, textRoom } from './flow/textPages.ts';
import type { PageDraft } from './pageDraft.ts';

/** The table of paddocks with their areas. */
export function paddockTablePages(project: Project, survey: Survey, input: TextPagesInput): PageDraft[] {
  const property = propertyOf(project);
  const [left, , right] = textRoom('portrait', property);
  const widthMm = right - left;
  const none = survey.paddocks.length === 0;
  const intro = none
    ? 'No fence lines close in a paddock.'
    : 'Areas inside the fence lines as drawn, measured on the earth.';
  const blocks = [
    words(intro, widthMm, { sizePt: letters.body, afterMm: 2, keepWithNext: !none }, input.measure),
    ...(none ? [] : tableBlocks(paddockTable(survey, property.units), widthMm, input.measure)),
  ];
  return textPages('Paddocks', blocks, 'portrait', input);
}

export function paddockTable(survey: Survey, units: Units): Table {
  const unit = areaUnit(units);
  const columns: Column[] = [
    { title: 'Paddock', strong: true },
    { title: 'Area', unit: unit.name, align: 'right' },
    { title: 'Remarks' },
  ];
  const rows = survey.paddocks.map(({ name, areaM2, named }) => [
    name ?? plainWords().survey.unnamedPaddock,
    fixed(areaM2 / unit.areaM2, 2),
    named === null ? 'Not named yet.' : named.note.trim(),
  ]);
  const totalM2 = survey.paddocks.reduce((total, { areaM2 }) => total + areaM2, 0);
  return { columns, rows, totals: ['Together', fixed(totalM2 / unit.areaM2, 2), ''] };
}
