import type { Item, PaperPoint } from '../drawing/displayList.ts';
import { box, line, stroke, tagged, text } from '../drawing/paint.ts';
import { letters, pen } from '../drawing/style.ts';
import type { MeasureText } from '../drawing/words.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { Yardstick } from '../model/yardstick.ts';
import { powerOf } from '../survey/power/powerOf.ts';
import { sheetYardsticks } from '../survey/power/sheetYardsticks.ts';
import type { Power } from '../survey/power/types.ts';
import type { Survey, SwitchRow, TestSheet } from '../survey/types.ts';
import type { Figures } from '../words/types.ts';
import { type Block, baselineIn, space, stack, words } from './flow/block.ts';
import { type Column, tableBlocks } from './flow/table.ts';
import { type TextPagesInput, textPages, textRoom } from './flow/textPages.ts';
import type { PageDraft } from './pageDraft.ts';
import { placeText } from './placeText.ts';
import { limitsInOneLine, usualFigure } from './yardstickInWords.ts';

/** A page for each section: which switches to open, what to do, where to read, and room for what was read. */
export function testSheetPages(
  project: Project,
  survey: Survey,
  sheets: readonly TestSheet[],
  input: TextPagesInput,
): PageDraft[] {
  const property = propertyOf(project);
  const [left, , right] = textRoom('portrait', property);
  const said = input.f.words.sheets.testSheet;
  if (sheets.length === 0) {
    const blocks = [words(said.none, right - left, { sizePt: letters.body }, input.measure)];
    return textPages(said.titleNone, blocks, 'portrait', input);
  }
  const power = powerOf(project, survey);
  return sheets.flatMap((sheet) => {
    const blocks = sheetBlocks(sheet, power, property.placed, right - left, input);
    return textPages(said.title({ section: sheet.section }), blocks, 'portrait', input);
  });
}

function sheetBlocks(
  sheet: TestSheet,
  power: Power,
  placed: boolean,
  widthMm: number,
  { f, measure }: TextPagesInput,
): Block[] {
  const { survey } = power;
  const heading = (title: string) =>
    words(
      title,
      widthMm,
      { sizePt: letters.heading, font: 'bold', role: 'H2', afterMm: 1, keepWithNext: true },
      measure,
    );
  const body = (content: string) => words(content, widthMm, { sizePt: letters.body, afterMm: 1 }, measure);
  const { testSheet: wording, heads, common } = f.words.sheets;
  const names = (ids: readonly string[]) => ids.map((id) => rowOf(id, survey)?.switch.name ?? id);
  const said = [
    sheet.closed.length > 0 ? wording.on({ switches: names(sheet.closed) }) : '',
    sheet.live.length > 0 ? wording.live({ sections: sheet.live }) : '',
    sheet.cutOff.length > 0 ? wording.deadAlone({ switches: names(sheet.cutOff) }) : '',
  ].filter((part) => part !== '');
  const yardsticks = sheetYardsticks(power, sheet);
  const places = sheet.readAt.map(({ text: where, at }, i) => [
    String(i + 1),
    f.say(where),
    ...(placed ? [placeText(at)] : []),
  ]);
  const columns: Column[] = [
    { title: heads.number },
    { title: heads.place },
    ...(placed ? [{ title: common.position, unit: common.wgs84 }] : []),
  ];
  return [
    words(wording.warning, widthMm, { sizePt: letters.body, font: 'bold', afterMm: 3 }, measure),
    heading(wording.off),
    ...(sheet.open.length === 0
      ? [body(wording.noSwitch)]
      : sheet.open.map((id) => tickRow(id, survey, widthMm, f, measure))),
    ...said.map(body),
    space(2),
    heading(wording.steps),
    ...sheet.steps.map((step, i) => stepRow(i + 1, f.say(step), widthMm, measure)),
    space(2),
    heading(wording.readAt),
    ...(places.length === 0 ? [body(wording.noPlace)] : tableBlocks({ columns, rows: places }, widthMm, measure)),
    space(3),
    heading(wording.readings),
    stack([
      readingGrid(widthMm, yardsticks, f),
      space(1),
      words(f.say(limitsInOneLine()), widthMm, { sizePt: letters.table, afterMm: 0 }, measure),
      space(6),
      signatureLine(widthMm, f),
    ]),
  ];
}

/** What a reading is judged by: what is usual, low under, good from. */
function yardstickCells(yardstick: Yardstick, f: Figures): string[] {
  const usual = usualFigure(yardstick);
  return [
    usual ? f.say(usual) : f.words.sheets.testSheet.usualNotKnown,
    f.volts(yardstick.lowBelowV),
    f.volts(yardstick.goodFromV),
  ];
}

/** The register's row of a switch. */
function rowOf(id: string, survey: Survey): SwitchRow | undefined {
  return survey.switches.find((row) => row.switch.id === id);
}

/** A box to tick, the switch and where it is. */
function tickRow(id: string, survey: Survey, widthMm: number, f: Figures, measure: MeasureText): Block {
  const row = rowOf(id, survey);
  const label = words(
    row ? f.words.sheets.testSheet.switchAt({ name: row.switch.name, place: f.say(row.where) }) : id,
    widthMm - 7,
    { sizePt: letters.body },
    measure,
  );
  return {
    heightMm: label.heightMm + 1.6,
    paint: ([x, y]) => [tickBox([x, y + 0.5]), ...label.paint([x + 7, y + 0.5])],
  };
}

function stepRow(number: number, step: string, widthMm: number, measure: MeasureText): Block {
  const label = words(step, widthMm - 13, { sizePt: letters.body }, measure);
  return {
    heightMm: label.heightMm + 1.6,
    paint: ([x, y]) => [
      tickBox([x, y + 0.5]),
      text(`${number}.`, [x + 11, baselineIn(y + 0.5, 4, letters.body)], {
        sizePt: letters.body,
        align: 'right',
        font: 'figures',
      }),
      ...label.paint([x + 13, y + 0.5]),
    ],
  };
}

function tickBox([x, y]: PaperPoint): Item {
  return box([x, y + 0.3, x + 3.4, y + 3.7], null, stroke(pen.thin));
}

/** Printed: the number and what the reading is judged by; to be written in: the rest, which share the room that is left. */
const printedMm = [9, 42, 17, 17] as const;
function readingHeads({ words: { sheets } }: Figures) {
  const { testSheet, heads } = sheets;
  return {
    printed: [heads.number, heads.usualThere, testSheet.lowUnder, heads.goodFrom],
    written: [testSheet.reading, testSheet.meter, heads.date, testSheet.weather, testSheet.readBy],
  };
}
const readingRowMm = 7;
const spareRows = 1;

/** Rows to write in: one for each place to read at, with what is usual there, and one to spare. */
function readingGrid(widthMm: number, yardsticks: readonly Yardstick[], f: Figures): Block {
  const { printed, written } = readingHeads(f);
  const titles = [...printed, ...written];
  const writtenMm = (widthMm - printedMm.reduce((sum, columnMm) => sum + columnMm, 0)) / written.length;
  const lefts = titles.map((_, c) => titles.slice(0, c).reduce((sum, __, i) => sum + (printedMm[i] ?? writtenMm), 0));
  const headMm = 5;
  const rows = yardsticks.length + spareRows;
  const heightMm = headMm + rows * readingRowMm;
  const style = { sizePt: letters.table } as const;
  return {
    heightMm,
    paint: ([x, y]) => {
      const cell = (content: string, column: number, top: number, rowMm: number, font: 'bold' | 'regular') =>
        text(content, [x + lefts[column]! + 1, baselineIn(top, rowMm, style.sizePt)], { ...style, font });
      return [
        tagged(
          'TR',
          titles.map((title, c) => tagged('TH', [cell(title, c, y, headMm, 'bold')])),
        ),
        box([x, y, x + widthMm, y + heightMm], null, stroke(pen.sign)),
        ...Array.from({ length: rows }, (_, row) => rule(x, x + widthMm, y + headMm + row * readingRowMm)),
        ...yardsticks.map((yardstick, row) => {
          const top = y + headMm + row * readingRowMm;
          const cells = [String(row + 1), ...yardstickCells(yardstick, f)];
          return tagged(
            'TR',
            cells.map((content, c) => tagged('TD', [cell(content, c, top, readingRowMm, 'regular')])),
          );
        }),
        ...lefts.slice(1).map((left) =>
          line(
            [
              [x + left, y],
              [x + left, y + heightMm],
            ],
            stroke(pen.hairline),
          ),
        ),
      ];
    },
  };
}

function signatureLine(widthMm: number, f: Figures): Block {
  const { testedBy, takenOverBy } = f.words.sheets.testSheet;
  const half = widthMm / 2 - 4;
  return {
    heightMm: 6,
    paint: ([x, y]) => [
      rule(x, x + half, y),
      rule(x + widthMm - half, x + widthMm, y),
      tagged('P', [text(testedBy, [x, y + 3.5], { sizePt: letters.table })]),
      tagged('P', [text(takenOverBy, [x + widthMm - half, y + 3.5], { sizePt: letters.table })]),
    ],
  };
}

function rule(from: number, to: number, y: number): Item {
  return line(
    [
      [from, y],
      [to, y],
    ],
    stroke(pen.hairline),
  );
}
