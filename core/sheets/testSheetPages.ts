import { type Project, propertyOf } from '../model/project.ts';
import type { Survey, SwitchRow, TestSheet } from '../registers/types.ts';
import type { Item, PaperPoint } from './displayList.ts';
import { type Block, baselineIn, space, words } from './flow/block.ts';
import { tableBlocks } from './flow/table.ts';
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
  const places = sheet.readAt.map(({ text: where, at }) => [where, placed ? placeText(at) : '-']);
  return [
    words(warning, widthMm, { sizePt: letters.body, font: 'bold', afterMm: 3 }, measure),
    heading('Open'),
    ...(sheet.open.length === 0 ? [body('No switch.')] : sheet.open.map((id) => tickRow(id, survey, widthMm, measure))),
    space(2),
    heading('Leave closed'),
    body(sheet.closed.map((id) => rowOf(id, survey)?.switch.name ?? id).join(', ') || 'No switch.'),
    space(2),
    heading('Steps'),
    ...sheet.steps.map((step, i) => stepRow(i + 1, step, widthMm, measure)),
    space(2),
    heading('Read at'),
    ...(places.length === 0
      ? [body('No place is named.')]
      : tableBlocks(
          { columns: [{ title: 'Place' }, { title: 'Position', unit: 'WGS 84' }], rows: places },
          widthMm,
          measure,
        )),
    space(3),
    heading('Readings'),
    readingGrid(widthMm, Math.max(4, places.length + 2)),
    space(8),
    signatureLine(widthMm),
  ];
}

/** The register's row of a switch that a test sheet names by its id or its name. */
function rowOf(idOrName: string, survey: Survey): SwitchRow | undefined {
  const rows = survey.switches;
  return rows.find((row) => row.switch.id === idOrName) ?? rows.find((row) => row.switch.name === idOrName);
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

const readingColumns = ['Place', 'Reading, kV', 'Meter', 'Date', 'Weather', 'Read by'];
const readingRowMm = 8;

function readingGrid(widthMm: number, rows: number): Block {
  const columnMm = widthMm / readingColumns.length;
  const headMm = 5;
  const heightMm = headMm + rows * readingRowMm;
  return {
    heightMm,
    paint: ([x, y]) => [
      tagged(
        'TR',
        readingColumns.map((title, i) =>
          tagged('TH', [
            text(title, [x + i * columnMm + 1, baselineIn(y, headMm, letters.table)], {
              sizePt: letters.table,
              font: 'bold',
            }),
          ]),
        ),
      ),
      box([x, y, x + widthMm, y + heightMm], null, stroke(pen.sign)),
      ...Array.from({ length: rows }, (_, i) => rule(x, x + widthMm, y + headMm + i * readingRowMm)),
      ...readingColumns.slice(1).map((_, i) =>
        line(
          [
            [x + (i + 1) * columnMm, y],
            [x + (i + 1) * columnMm, y + heightMm],
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
