import { type Project, propertyOf } from '../model/project.ts';
import type { Survey, SwitchRow, TestSheet } from '../registers/types.ts';
import type { Item, PaperPoint } from './displayList.ts';
import { type Block, baselineIn, space, stack, words } from './flow/block.ts';
import { type Column, tableBlocks } from './flow/table.ts';
import { type TextPagesInput, textPages, textRoom } from './flow/textPages.ts';
import type { PageDraft } from './pageDraft.ts';
import { box, line, stroke, tagged, text } from './paint.ts';
import { placeText } from './placeText.ts';
import { letters, pen } from './style.ts';
import type { MeasureText } from './words.ts';

/** A page for each section: which switches to open, what to do, where to read, and room for what was read. */
export function testSheetPages(
  project: Project,
  survey: Survey,
  sheets: readonly TestSheet[],
  input: TextPagesInput,
): PageDraft[] {
  const property = propertyOf(project);
  const [left, , right] = textRoom('portrait', property);
  if (sheets.length === 0) {
    const blocks = [words('There is no section to test.', right - left, { sizePt: letters.body }, input.measure)];
    return textPages('Test sheets', blocks, 'portrait', input);
  }
  return sheets.flatMap((sheet) => {
    const blocks = sheetBlocks(sheet, survey, property.placed, right - left, input.measure);
    return textPages(`Test sheet, section ${sheet.section}`, blocks, 'portrait', input);
  });
}

function sheetBlocks(
  sheet: TestSheet,
  survey: Survey,
  placed: boolean,
  widthMm: number,
  measure: MeasureText,
): Block[] {
  const heading = (title: string) =>
    words(
      title,
      widthMm,
      { sizePt: letters.heading, font: 'bold', role: 'H2', afterMm: 1, keepWithNext: true },
      measure,
    );
  const body = (content: string) => words(content, widthMm, { sizePt: letters.body, afterMm: 1 }, measure);
  const warning =
    'Before touching wires or switch gear: energiser off, and the fence proven dead. Switch it on again only to read, with everybody clear of the fence.';
  const names = (ids: readonly string[]) => ids.map((id) => rowOf(id, survey)?.switch.name ?? id).join(', ');
  const said = [
    sheet.closed.length > 0 ? `Closed on the way to it: ${names(sheet.closed)}.` : '',
    sheet.live.length > 0 ? `Live while it is tested: section ${sheet.live.join(', ')}.` : '',
    sheet.cutOff.length > 0 ? `To make this section dead alone, open ${names(sheet.cutOff)}.` : '',
  ].filter((part) => part !== '');
  const places = sheet.readAt.map(({ text: where, at }, i) => [
    String(i + 1),
    where,
    ...(placed ? [placeText(at)] : []),
  ]);
  const columns: Column[] = [
    { title: 'No.' },
    { title: 'Place' },
    ...(placed ? [{ title: 'Position', unit: 'WGS 84' }] : []),
  ];
  return [
    words(warning, widthMm, { sizePt: letters.body, font: 'bold', afterMm: 3 }, measure),
    heading('Open'),
    ...(sheet.open.length === 0 ? [body('No switch.')] : sheet.open.map((id) => tickRow(id, survey, widthMm, measure))),
    ...said.map(body),
    space(2),
    heading('Steps'),
    ...sheet.steps.map((step, i) => stepRow(i + 1, step, widthMm, measure)),
    space(2),
    heading('Read at'),
    ...(places.length === 0 ? [body('No place is named.')] : tableBlocks({ columns, rows: places }, widthMm, measure)),
    space(3),
    heading('Readings'),
    stack([readingGrid(widthMm, places.length), space(8), signatureLine(widthMm)]),
  ];
}

/** The register's row of a switch. */
function rowOf(id: string, survey: Survey): SwitchRow | undefined {
  return survey.switches.find((row) => row.switch.id === id);
}

/** A box to tick, the switch and where it is. */
function tickRow(id: string, survey: Survey, widthMm: number, measure: MeasureText): Block {
  const row = rowOf(id, survey);
  const label = words(
    row ? `${row.switch.name}: ${row.placeText}` : id,
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

const readingColumns = ['No.', 'Reading, kV', 'Meter', 'Date', 'Weather', 'Read by'];
const readingRowMm = 7;
const spareRows = 1;

/** Rows to write in: one for each place to read at, and one to spare. */
function readingGrid(widthMm: number, places: number): Block {
  const firstMm = 12;
  const columnMm = (widthMm - firstMm) / (readingColumns.length - 1);
  const left = (column: number) => (column === 0 ? 0 : firstMm + (column - 1) * columnMm);
  const headMm = 5;
  const heightMm = headMm + (places + spareRows) * readingRowMm;
  const style = { sizePt: letters.table } as const;
  return {
    heightMm,
    paint: ([x, y]) => [
      tagged(
        'TR',
        readingColumns.map((title, c) => {
          const at: PaperPoint = [x + left(c) + 1, baselineIn(y, headMm, style.sizePt)];
          return tagged('TH', [text(title, at, { ...style, font: 'bold' })]);
        }),
      ),
      box([x, y, x + widthMm, y + heightMm], null, stroke(pen.sign)),
      ...Array.from({ length: places + spareRows }, (_, row) => rule(x, x + widthMm, y + headMm + row * readingRowMm)),
      ...Array.from({ length: places }, (_, row) => {
        const top = y + headMm + row * readingRowMm;
        return tagged('P', [text(String(row + 1), [x + 1, baselineIn(top, readingRowMm, style.sizePt)], style)]);
      }),
      ...readingColumns.slice(1).map((_, c) =>
        line(
          [
            [x + left(c + 1), y],
            [x + left(c + 1), y + heightMm],
          ],
          stroke(pen.hairline),
        ),
      ),
    ],
  };
}

function signatureLine(widthMm: number): Block {
  const half = widthMm / 2 - 4;
  return {
    heightMm: 6,
    paint: ([x, y]) => [
      rule(x, x + half, y),
      rule(x + widthMm - half, x + widthMm, y),
      tagged('P', [text('Tested by, date', [x, y + 3.5], { sizePt: letters.table })]),
      tagged('P', [text('Taken over by, date', [x + widthMm - half, y + 3.5], { sizePt: letters.table })]),
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
