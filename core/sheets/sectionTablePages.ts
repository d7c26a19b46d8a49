import { drawFence, sectionMarks } from '../drawing/strokes/fence.ts';
import { letters, pen } from '../drawing/style.ts';
import { type Project, propertyOf } from '../model/project.ts';
import { overLimitInWords, overLimitStretches } from '../survey/overLimit.ts';
import type { Section, Survey } from '../survey/types.ts';
import { figures } from '../words/figures.ts';
import { lengthUnit } from '../words/numbers/units.ts';
import { fixed, formatLength } from '../words/numbers/write.ts';
import { counted, inOrder } from '../words/text.ts';
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
  const intro =
    sections.length === 0
      ? 'No live fence is drawn, so there are no sections.'
      : 'A section is what stays joined when every cut-out switch is open.';
  const blocks = [
    words(intro, widthMm, { sizePt: letters.body, afterMm: 2, keepWithNext: sections.length > 0 }, input.measure),
    ...(sections.length > 0 ? tableBlocks(sectionTable(project, survey), widthMm, input.measure) : []),
    ...overLimitWords(project, survey).flatMap((text, i) => [
      ...(i === 0 ? [space(3)] : []),
      words(text, widthMm, { sizePt: letters.body, afterMm: 1, keepWithNext: i === 0 }, input.measure),
    ]),
  ];
  return textPages('Sections', blocks, 'landscape', input);
}

/** What no set of switches brings within the limits, as the plan says it on the screen; none where all can be. */
export function overLimitWords(project: Project, survey: Survey): string[] {
  const { units, divide } = propertyOf(project);
  const lines = overLimitInWords(project, overLimitStretches(project, survey), figures(units));
  if (lines.length === 0) return [];
  const limits = [
    `${formatLength(divide.maxSectionM, units)} of fence`,
    ...(divide.maxGateways === null ? [] : [counted(divide.maxGateways, 'gateway')]),
  ];
  const head = `No set of switches keeps all sections within the limit of ${limits.join(' and ')}:`;
  return [head, ...lines.map(({ text }) => text)];
}

export function sectionTable(project: Project, survey: Survey): Table {
  const unit = lengthUnit(propertyOf(project).units);
  const columns: Column[] = [
    { title: 'Section', strong: true },
    { title: 'Marked' },
    { title: 'Fence', unit: unit.name, align: 'right' },
    { title: 'Fed' },
    { title: 'Lines' },
    { title: 'Gateways' },
    { title: 'Switches on its border' },
    { title: 'Remarks' },
  ];
  const lineName = (id: string) => project.fenceLine.get(id)?.name ?? id;
  const rows = survey.sections.map((section): Cell[] => [
    section.letter,
    marked(section),
    fixed(section.lengthM / unit.lengthM, 0),
    section.fed ? 'yes' : 'no',
    section.lineIds.map(lineName).join(', '),
    inOrder(section.gatewayIds.map((id) => project.gateway.get(id)?.name ?? id)).join(', ') || '-',
    inOrder(section.switchIds.map((id) => project.switch.get(id)?.name ?? id)).join(', ') || '-',
    remarks(section, unit),
  ]);
  const totalM = survey.sections.reduce((total, { lengthM }) => total + lengthM, 0);
  return { columns, rows, totals: ['Together', '', fixed(totalM / unit.lengthM, 0), '', '', '', '', ''] };
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
): string {
  const said = [
    holdsEnergiser ? 'The energiser feeds in here.' : '',
    overByM !== null ? `Longer than the limit by ${fixed(overByM / unit.lengthM, 0)}\u00a0${unit.name}.` : '',
    overByGateways !== null ? `${counted(overByGateways, 'gateway')} over the limit.` : '',
    fed ? '' : 'No energiser reaches it.',
  ];
  return said.filter((part) => part !== '').join(' ');
}
