import { drawFence, sectionMarks } from '../drawing/strokes/fence.ts';
import { letters, pen } from '../drawing/style.ts';
import { type Project, propertyOf } from '../model/project.ts';
import { overLimitInWords, overLimitStretches } from '../survey/overLimit.ts';
import type { Section, Survey } from '../survey/types.ts';
import { lengthUnit } from '../words/numbers/units.ts';
import { fixed } from '../words/numbers/write.ts';
import { inOrder } from '../words/text.ts';
import type { Figures } from '../words/types.ts';
import { space, words } from './flow/block.ts';
import { type Cell, type Column, type Table, tableBlocks } from './flow/table.ts';
import { type TextPagesInput, textPages, textRoom } from './flow/textPages.ts';
import type { PageDraft } from './pageDraft.ts';

/** The table of sections and what each holds. */
export function sectionTablePages(project: Project, survey: Survey, input: TextPagesInput): PageDraft[] {
  const property = propertyOf(project);
  const [left, , right] = textRoom('landscape', property);
  const widthMm = right - left;
  const { sections } = survey;
  const said = input.f.words.sheets.sections;
  const intro = sections.length === 0 ? said.none : said.intro;
  const blocks = [
    words(intro, widthMm, { sizePt: letters.body, afterMm: 2, keepWithNext: sections.length > 0 }, input.measure),
    ...(sections.length > 0 ? tableBlocks(sectionTable(project, survey, input.f), widthMm, input.measure) : []),
    ...overLimitWords(project, survey, input.f).flatMap((text, i) => [
      ...(i === 0 ? [space(3)] : []),
      words(text, widthMm, { sizePt: letters.body, afterMm: 1, keepWithNext: i === 0 }, input.measure),
    ]),
  ];
  return textPages(said.title, blocks, 'landscape', input);
}

/** What no set of switches brings within the limits, as the plan says it on the screen; none where all can be. */
export function overLimitWords(project: Project, survey: Survey, f: Figures): string[] {
  const { divide } = propertyOf(project);
  const lines = overLimitInWords(project, overLimitStretches(project, survey), f);
  if (lines.length === 0) return [];
  const { maxSectionM: maxM, maxGateways } = divide;
  const head = f.words.sheets.sections.overLimits({ maxM, maxGateways });
  return [head, ...lines.map(({ text }) => text)];
}

export function sectionTable(project: Project, survey: Survey, f: Figures): Table {
  const unit = lengthUnit(f.units);
  const { sections: said, heads, cells } = f.words.sheets;
  const columns: Column[] = [
    { title: heads.section, strong: true },
    { title: said.marked },
    { title: said.fence, unit: unit.name, align: 'right' },
    { title: said.fed },
    { title: said.lines },
    { title: said.gateways },
    { title: said.switches },
    { title: heads.remarks },
  ];
  const lineName = (id: string) => project.fenceLine.get(id)?.name ?? id;
  const rows = survey.sections.map((section): Cell[] => [
    section.letter,
    marked(section),
    fixed(section.lengthM / unit.lengthM, 0),
    section.fed ? cells.yes : cells.no,
    section.lineIds.map(lineName).join(', '),
    inOrder(section.gatewayIds.map((id) => project.gateway.get(id)?.name ?? id)).join(', ') || '-',
    inOrder(section.switchIds.map((id) => project.switch.get(id)?.name ?? id)).join(', ') || '-',
    remarks(section, unit, f),
  ]);
  const totalM = survey.sections.reduce((total, { lengthM }) => total + lengthM, 0);
  return { columns, rows, totals: [heads.together, '', fixed(totalM / unit.lengthM, 0), '', '', '', '', ''] };
}

function marked({ index }: Section): Cell {
  return {
    widthMm: 16,
    draw: ([x, y]) =>
      drawFence(
        [
          [x, y],
          [x + 15, y],
        ],
        'built',
        pen.sign,
        sectionMarks(index),
      ),
  };
}

function remarks(
  { holdsEnergiser, overByM, overByGateways, fed }: Section,
  unit: { name: string; lengthM: number },
  f: Figures,
): string {
  const { energiser, tooLong, tooManyGateways, notFed } = f.words.sheets.sections;
  const said = [
    holdsEnergiser ? energiser : '',
    overByM !== null ? tooLong({ over: `${fixed(overByM / unit.lengthM, 0)}\u00a0${unit.name}` }) : '',
    overByGateways !== null ? tooManyGateways({ count: overByGateways }) : '',
    fed ? '' : notFed,
  ];
  return f.words.things.sentences({ all: said.filter((part) => part !== '') });
}
