import type { Item } from '../../drawing/displayList.ts';
import { line, stroke, tagged, text } from '../../drawing/paint.ts';
import { letters, pen } from '../../drawing/style.ts';
import { propertyOf } from '../../model/project.ts';
import type { TestRun } from '../../model/recordThings.ts';
import type { Reading } from '../../model/things.ts';
import { powerOf } from '../../survey/power/powerOf.ts';
import { readingRows } from '../../survey/power/readingRows.ts';
import { dateText } from '../../words/dates.ts';
import { figures } from '../../words/figures.ts';
import { formatVoltage } from '../../words/numbers/write.ts';
import type { Figures } from '../../words/types.ts';
import { type Block, space } from '../flow/block.ts';
import type { Table } from '../flow/table.ts';
import { textPages } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { limitsExplained, usualFigure } from '../yardstickInWords.ts';
import { held, listed, paragraph, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';

const outcomeWords = { passed: 'passed', failed: 'failed', leftOut: 'left out' } as const;

/** What was tested: every run through the test sheets, and all readings, with lines to sign. */
export function testResultPages(input: PackInput): PageDraft[] {
  const { project, measure } = input;
  const widthMm = uprightWidthMm(input);
  const runs = [...project.testRun.values()].sort((a, b) => b.date.localeCompare(a.date));
  const loose = [...project.reading.values()].filter(({ runId }) => runId === undefined || !project.testRun.has(runId));
  const least = formatVoltage(propertyOf(project).power.stockMinimumV);
  const blocks: Block[] = [
    paragraph(
      runs.length === 0
        ? 'No run through the test sheets was recorded. The sheets that follow have room to write on.'
        : `A section passes where every reading is as usual at its place and holds the stock: ${least} and over. Beside each reading stands what it was judged by when it was taken; where nothing stands, what holds the stock. ${input.f.say(limitsExplained())}`,
      widthMm,
      measure,
    ),
    ...runs.flatMap((run) => runBlocks(run, widthMm, input)),
    ...(loose.length > 0 ? listed('Other readings', readingTable(loose, input), '', widthMm, measure) : []),
    space(8),
    signatures(widthMm),
  ];
  return textPages('Test results', blocks, 'portrait', input);
}

function runBlocks(run: TestRun, widthMm: number, input: PackInput): Block[] {
  const { project, measure } = input;
  const readings = [...project.reading.values()].filter(({ runId }) => runId === run.id);
  const of = [
    dateText(run.date),
    run.by && `by ${run.by}`,
    run.meter && `meter ${run.meter}`,
    run.weather && `weather ${run.weather}`,
    run.finished ? 'finished' : 'not finished',
  ];
  const results: Table = {
    columns: [{ title: 'Section', strong: true }, { title: 'Result' }, { title: 'Remarks' }],
    rows: run.results.map(({ section, outcome, note }) => [section, outcomeWords[outcome], note || '-']),
  };
  return [
    ...listed(run.name, results, 'No section was tested.', widthMm, measure),
    paragraph(`${of.filter((part) => part !== '').join(', ')}.${run.note ? ` ${run.note}` : ''}`, widthMm, measure),
    ...(readings.length > 0 ? listed('Readings', readingTable(readings, input), '', widthMm, measure) : []),
  ];
}

export function readingTable(
  readings: readonly Reading[],
  { project, survey, f }: Pick<PackInput, 'project' | 'survey' | 'f'>,
): Table {
  const rows = new Map(readingRows(powerOf(project, survey)).map(({ reading, spot }) => [reading.id, spot]));
  const words = figures(propertyOf(project).units).words.survey;
  const whereOf = ({ id }: Reading) => {
    const spot = rows.get(id);
    if (spot === undefined) return '-';
    return spot ? words.atSpot({ spot }) : words.awayFromFence;
  };
  const isJudged = readings.some(({ yardstick }) => yardstick !== undefined);
  return {
    columns: [
      { title: 'Date' },
      { title: 'Section', strong: true },
      { title: 'Place' },
      { title: 'Voltage', align: 'right' },
      ...(isJudged ? [{ title: 'Usual there' }, { title: 'Good from', align: 'right' } as const] : []),
      { title: 'Current', unit: 'A', align: 'right' },
      { title: 'Open switches' },
      { title: 'Meter, weather, by' },
      { title: 'Remarks' },
    ],
    rows: readings.map((reading) => [
      held(dateText(reading.date)),
      reading.section ?? '-',
      reading.place || whereOf(reading),
      reading.voltageV === null ? '-' : formatVoltage(reading.voltageV),
      ...(isJudged ? judgedCells(reading, f) : []),
      reading.currentA === null ? '-' : String(reading.currentA),
      reading.openSwitchIds.map((id) => project.switch.get(id)?.name ?? 'one that is gone').join(', ') || 'none',
      [reading.meter, reading.weather, reading.by].filter((part) => part).join(', ') || '-',
      reading.note || '-',
    ]),
  };
}

function judgedCells({ yardstick }: Reading, f: Figures): string[] {
  if (!yardstick) return ['-', '-'];
  const usual = usualFigure(yardstick);
  return [usual ? f.say(usual) : f.words.things.notKnown, f.volts(yardstick.goodFromV)];
}

export function signatures(widthMm: number): Block {
  const half = widthMm / 2 - 4;
  const rule = (x: number, y: number): Item =>
    line(
      [
        [x, y],
        [x + half, y],
      ],
      stroke(pen.hairline),
    );
  return {
    heightMm: 8,
    paint: ([x, y]) => [
      rule(x, y),
      rule(x + widthMm - half, y),
      tagged('P', [text('Handed over by, date', [x, y + 3.6], { sizePt: letters.table })]),
      tagged('P', [text('Taken over by, date', [x + widthMm - half, y + 3.6], { sizePt: letters.table })]),
    ],
  };
}
