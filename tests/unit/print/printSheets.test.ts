import { describe, expect, it } from 'vitest';
import type { SheetOptions } from '../../../core/api/sheetOptions.ts';
import { scaleBarFor } from '../../../core/drawing/signs/scaleBar.ts';
import { newProperty } from '../../../core/model/defaults.ts';
import { projectOf } from '../../../core/model/project.ts';
import type { Thing } from '../../../core/model/things.ts';
import { crossingTable } from '../../../core/sheets/crossingSchedulePages.ts';
import type { Table } from '../../../core/sheets/flow/table.ts';
import { paddockTable } from '../../../core/sheets/paddockTablePages.ts';
import { sectionTable } from '../../../core/sheets/sectionTablePages.ts';
import { switchTable } from '../../../core/sheets/switchRegisterPages.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { testSheets } from '../../../core/survey/testSheets.ts';
import { figures } from '../../../core/words/figures.ts';
import { printJob } from '../../../electron/print/printJob.ts';
import { inEnglish } from '../../support/english.ts';
import { baseOptions, inventedThings } from '../sheets/inventedProperty.ts';
import { type PdfPage, readPdf } from './readPdf.ts';

const printSheets = (things: readonly Thing[], options: SheetOptions) => printJob({ what: 'sheets', options }, things);

const ptPerMm = 72 / 25.4;
const things = inventedThings();
const project = projectOf(things);
const survey = surveyOf(project);
const made = await printSheets(things, baseOptions);
const pdf = readPdf(made.bytes);

/** Without spaces, and with accents composed, so that wrapped words compare. */
const bare = (text: string) => text.normalize('NFC').replace(/[\s\u00a0]/g, '');
const allText = bare(pdf.pages.flatMap(({ texts }) => texts).join(''));
/** Every letter of a table in the file, however its cells were wrapped. */
const words = new Set(
  pdf.pages.flatMap(({ texts }) => texts.flatMap((text) => text.normalize('NFC').split(/[\s\u00a0]+/))),
);

describe('the PDF', () => {
  it('is named for property, scale and date', () => {
    expect(made.fileName).toBe('Kōwhai Flat (invented) map sheet 1-10000 2026-05-12.pdf');
    expect(made.mediaType).toBe('application/pdf');
    expect(pdf.raw.startsWith('%PDF-1.7')).toBe(true);
  });

  it.each([
    ['switch register', () => switchTable(survey, figures('metric'), true)],
    ['crossing schedule', () => crossingTable(project, survey, figures('metric'), true)],
    ['section table', () => sectionTable(project, survey, figures('metric'))],
    ['paddock table', () => paddockTable(survey, figures('metric'))],
  ] as [string, () => Table][])('holds every word of the %s as text', (_, make) => {
    const table = make();
    expect(table.rows.length).toBeGreaterThan(5);
    for (const row of [...table.rows, table.totals ?? []]) {
      for (const cell of row) {
        if (typeof cell !== 'string') continue;
        for (const word of cell.split(/[\s\u00a0]+/)) if (word !== '') expect(words).toContain(word);
      }
    }
  });

  it('holds every step of every test sheet as text', () => {
    const sheets = testSheets(project, survey);
    expect(sheets.length).toBe(survey.sections.length);
    for (const { steps } of sheets) for (const step of steps) expect(allText).toContain(bare(inEnglish(step)));
  });

  it('says each label on the map once: haloes are no text', () => {
    const [map] = pdf.pages;
    expect(map!.texts.filter((text) => text === 'G7')).toHaveLength(1);
    expect(map!.texts.filter((text) => text.startsWith('Paddock'))).toHaveLength(12);
  });

  it('embeds its fonts and names no standard one', () => {
    expect(pdf.raw).toContain('/FontFile2');
    expect(pdf.raw).not.toMatch(/\/BaseFont \/(Helvetica|Times|Courier)/);
    const bases = [...pdf.raw.matchAll(/\/BaseFont \/([^\s/]+)/g)].map(([, name]) => name);
    expect(bases.length).toBeGreaterThan(0);
    for (const name of bases) expect(name).toMatch(/^[A-Z]{6}\+AtkinsonHyperlegible/);
  });

  it('is tagged, titled, in a language, and declares PDF/A-2b', () => {
    expect(pdf.raw).toContain('/MarkInfo');
    expect(pdf.raw).toMatch(/\/Lang \(en\)/);
    expect(pdf.raw).toContain('/StructTreeRoot');
    expect(pdf.raw).toContain('<pdfaid:part>2</pdfaid:part>');
    expect(pdf.raw).toContain('/OutputIntents');
  });

  it('is the same file from the same drawing and date', async () => {
    const again = await printSheets(things, baseOptions);
    expect(Buffer.compare(Buffer.from(again.bytes), Buffer.from(made.bytes))).toBe(0);
  });

  it('draws nothing outside the paper, pens included', () => {
    for (const { width, height, paths } of pdf.pages) {
      for (const { points, filled } of paths) {
        // Paths in the map's clip may run over its edge by a sign; none may leave the paper.
        for (const [x, y] of points) {
          expect(x >= -0.01 && x <= width + 0.01 && y >= -0.01 && y <= height + 0.01, `${x} ${y} ${filled}`).toBe(true);
        }
      }
    }
  });
});

describe('scale', () => {
  it.each([
    ['metric', 500],
    ['metric', 5000],
    ['metric', 15_000],
    ['imperial', 2500],
  ] as const)('the %s bar at 1:%i is true within 0.2 % in the page’s own content', async (units, scaleDenominator) => {
    const inUnits = things.map((thing) => (thing.kind === 'property' ? { ...thing, units } : thing));
    const centre = things.find((thing) => thing.kind === 'energiser')!.at;
    const file = await printSheets(inUnits, { ...baseOptions, scaleDenominator, centre });
    const bar = scaleBarFor(scaleDenominator, units, 40.5);
    const measuredMm = barLengthMm(readPdf(file.bytes).pages[0]!);
    expect(Math.abs(measuredMm / ((bar.lengthM * 1000) / scaleDenominator) - 1)).toBeLessThan(0.002);
  });

  it('a fence 706 m either side of the lane is drawn as long as it is', () => {
    const { paths } = pdf.pages[0]!;
    // Of the paths with five corners, the widest that is narrower than the frames: the boundary.
    const closed = paths
      .filter(({ points, stroked }) => stroked && points.length === 5)
      .map(({ points }) => spanX(points));
    const longest = Math.max(...closed.filter((span) => span < 180 * ptPerMm));
    // It is 1,412 m wide; the sheet is at 1:10,000.
    expect(longest / ptPerMm).toBeCloseTo(141.2, 1);
  });
});

/** The bar: two equal black boxes as high as the bar, a box apart; its length is four of them. */
function barLengthMm({ paths }: PdfPage): number {
  const boxes = paths
    .filter(({ points, filled, stroked }) => filled && !stroked && points.length >= 4)
    .map(({ points }) => {
      const ys = points.map(([, y]) => y);
      const xs = points.map(([x]) => x);
      return {
        left: Math.min(...xs),
        right: Math.max(...xs),
        top: Math.min(...ys),
        height: Math.max(...ys) - Math.min(...ys),
      };
    })
    .filter(({ height, left, right }) => Math.abs(height - 1.5 * ptPerMm) < 0.01 && right - left > 2 * ptPerMm);
  expect(boxes).toHaveLength(2);
  const [first, second] = boxes;
  return ((second!.right - first!.left) * 4) / 3 / ptPerMm;
}

function spanX(points: readonly (readonly [number, number])[]): number {
  const xs = points.map(([x]) => x);
  return Math.max(...xs) - Math.min(...xs);
}

describe('names', () => {
  it.each([
    ['macrons and accents', 'Ōtāwhao Ñandú Żółw Škoda Ærø', 'Ōtāwhao Ñandú Żółw Škoda Ærø'],
    ['accents that the typeface lacks: the bare letter', 'Ŵern Ĉielo', 'Wern Cielo'],
    ['emoji and other scripts: a question mark each', 'Run 🐑🐑 農', 'Run ?? ?'],
    ['control characters: nothing', 'Ru\u0007n\u200b', 'Run'],
  ])('%s', async (_, name, shown) => {
    const file = await printSheets(inventedThings(1, name), { ...baseOptions, withTestSheets: false });
    for (const { texts } of readPdf(file.bytes).pages) {
      expect(bare(texts.join(''))).toContain(bare(shown));
    }
  });

  it('a blank property makes a file', async () => {
    const file = await printSheets([newProperty('')], baseOptions);
    expect(file.fileName).toBe('Property map sheet 1-10000 2026-05-12.pdf');
    expect(readPdf(file.bytes).pages.length).toBeGreaterThan(0);
  });

  it('only what was asked for is printed', async () => {
    const file = await printSheets(things, {
      ...baseOptions,
      withSwitchRegister: false,
      withCrossingSchedule: false,
      withTestSheets: false,
    });
    expect(readPdf(file.bytes).pages).toHaveLength(1);
  });
});
