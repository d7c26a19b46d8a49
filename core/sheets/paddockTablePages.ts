import { letters } from '../drawing/style.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { Survey } from '../survey/types.ts';
import { areaUnit } from '../words/numbers/units.ts';
import { fixed } from '../words/numbers/write.ts';
import type { Figures } from '../words/types.ts';
import { words } from './flow/block.ts';
import { type Column, type Table, tableBlocks } from './flow/table.ts';
import { type TextPagesInput, textPages, textRoom } from './flow/textPages.ts';
import type { PageDraft } from './pageDraft.ts';

/** The table of paddocks with their areas. */
export function paddockTablePages(project: Project, survey: Survey, input: TextPagesInput): PageDraft[] {
  const property = propertyOf(project);
  const [left, , right] = textRoom('portrait', property);
  const widthMm = right - left;
  const said = input.f.words.sheets.paddocks;
  const none = survey.paddocks.length === 0;
  const intro = none ? said.none : said.intro;
  const blocks = [
    words(intro, widthMm, { sizePt: letters.body, afterMm: 2, keepWithNext: !none }, input.measure),
    ...(none ? [] : tableBlocks(paddockTable(survey, input.f), widthMm, input.measure)),
  ];
  return textPages(said.title, blocks, 'portrait', input);
}

export function paddockTable(survey: Survey, f: Figures): Table {
  const unit = areaUnit(f.units);
  const { paddocks: said, heads } = f.words.sheets;
  const columns: Column[] = [
    { title: said.paddock, strong: true },
    { title: said.area, unit: unit.name, align: 'right' },
    { title: heads.remarks },
  ];
  const rows = survey.paddocks.map(({ name, areaM2, named }) => [
    name ?? f.words.survey.unnamedPaddock,
    fixed(areaM2 / unit.areaM2, 2),
    named === null ? said.notNamed : named.note.trim(),
  ]);
  const totalM2 = survey.paddocks.reduce((total, { areaM2 }) => total + areaM2, 0);
  return { columns, rows, totals: [heads.together, fixed(totalM2 / unit.areaM2, 2), ''] };
}
