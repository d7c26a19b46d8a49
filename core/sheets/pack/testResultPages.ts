import type { Item } from '../../drawing/displayList.ts';
import { line, stroke, tagged, text } from '../../drawing/paint.ts';
import { letters, pen } from '../../drawing/style.ts';
import { propertyOf } from '../../model/project.ts';
import type { TestRun } from '../../model/recordThings.ts';
import type { Reading } from '../../model/things.ts';
import { powerOf } from '../../survey/power/powerOf.ts';
import { readingRows } from '../../survey/power/readingRows.ts';
import type { Figures } from '../../words/types.ts';
import { type Block, space } from '../flow/block.ts';
import type { Table } from '../flow/table.ts';
import { textPages } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { limitsExplained, usualFigure } from '../yardstickInWords.ts';
import { held, listed, paragraph, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';

/** What was tested: every run through the test sheets, and all readings, with lines to sign. */
export function testResultPages(input: PackInput): PageDraft[] {
  const { project, f, measure } = input;
  const said = f.words.sheets.testResults;
  const widthMm = uprightWidthMm(input);
  const runs = [...project.testRun.values()].sort((a, b) => b.date.localeCompare(a.date));
  const loose = [...project.reading.values()].filter(({ runId }) => runId === undefined || !project.testRun.has(runId));
  const least = f.volts(propertyOf(project).power.stockMinimumV);
  const blocks: Block[] = [
    paragraph(
      runs.length === 0 ? said.noRun : said.intro({ least, limits: f.say(limitsExplained()) }),
      widthMm,
      measure,
    ),
    ...runs.flatMap((run) => runBlocks(run, widthMm, input)),
    ...(loose.length > 0 ? listed(said.otherReadings, readingTable(loose, input), '', widthMm, measure) : []),
    space(8),
    signatures(widthMm, f),
  ];
  return textPages(said.title, blocks, 'portrait', input);
}

function runBlocks(run: TestRun, widthMm: number, input: PackInput): Block[] {
  const { project, f, measure } = input;
  const { testResults: said, heads, cells } = f.words.sheets;
  const readings = [...project.reading.values()].filter(({ runId }) => runId === run.id);
  const of = [
    f.date(run.date),
    run.by && cells.by({ name: run.by }),
    run.meter && cells.meter({ name: run.meter }),
    run.weather && cells.weather({ weather: run.weather }),
    run.finished ? said.finished : said.notFinished,
  ];
  const results: Table = {
    columns: [{ title: heads.section, strong: true }, { title: said.result }, { title: heads.remarks }],
    rows: run.results.map(({ section, outcome, note }) => [section, said[outcome], note || '-']),
  };
  return [
    ...listed(run.name, results, said.noSection, widthMm, measure),
    paragraph(
      f.words.things.sentences({
        all: [said.particulars({ parts: of.filter((part) => part !== '') }), ...(run.note ? [run.note] : [])],
      }),
      widthMm,
      measure,
    ),
    ...(readings.length > 0 ? listed(said.readings, readingTable(readings, input), '', widthMm, measure) : []),
  ];
}

export function readingTable(
  readings: readonly Reading[],
  { project, survey, f }: Pick<PackInput, 'project' | 'survey' | 'f'>,
): Table {
  const rows = new Map(readingRows(powerOf(project, survey)).map(({ reading, spot }) => [reading.id, spot]));
  const whereOf = ({ id }: Reading) => {
    const spot = rows.get(id);
    if (spot === undefined) return '-';
    return spot ? f.words.survey.atSpot({ spot }) : f.words.survey.awayFromFence;
  };
  const { testResults: said, heads, cells } = f.words.sheets;
  const isJudged = readings.some(({ yardstick }) => yardstick !== undefined);
  return {
    columns: [
      { title: heads.date },
      { title: heads.section, strong: true },
      { title: heads.place },
      { title: said.voltage, align: 'right' },
      ...(isJudged ? [{ title: heads.usualThere }, { title: heads.goodFrom, align: 'right' } as const] : []),
      { title: said.current, unit: 'A', align: 'right' },
      { title: said.switchesOff },
      { title: heads.meterWeatherBy },
      { title: heads.remarks },
    ],
    rows: readings.map((reading) => [
      held(f.date(reading.date)),
      reading.section ?? '-',
      reading.place || whereOf(reading),
      reading.voltageV === null ? '-' : f.volts(reading.voltageV),
      ...(isJudged ? judgedCells(reading, f) : []),
      reading.currentA === null ? '-' : String(reading.currentA),
      reading.openSwitchIds.map((id) => project.switch.get(id)?.name ?? said.goneSwitch).join(', ') || cells.none,
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

function signatures(widthMm: number, f: Figures): Block {
  const { handedOverBy, takenOverBy } = f.words.sheets.testResults;
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
      tagged('P', [text(handedOverBy, [x, y + 3.6], { sizePt: letters.table })]),
      tagged('P', [text(takenOverBy, [x + widthMm - half, y + 3.6], { sizePt: letters.table })]),
    ],
  };
}
