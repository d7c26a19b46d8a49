import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leafItems, type TextItem } from '../../../core/drawing/displayList.ts';
import { textBox, wrapText } from '../../../core/drawing/words.ts';
import { newProperty } from '../../../core/model/defaults.ts';
import { columnWidths, type Table, tableBlocks } from '../../../core/sheets/flow/table.ts';
import { textPages, textRoom } from '../../../core/sheets/flow/textPages.ts';
import { figures } from '../../../core/words/figures.ts';
import { plainMeasure as measure } from './plainMeasure.ts';

const cell = fc.oneof(
  fc.string({ maxLength: 12 }),
  fc
    .array(fc.string({ minLength: 1, maxLength: 9, unit: 'grapheme-ascii' }), { maxLength: 20 })
    .map((words) => words.join(' ')),
  fc.constant('W'.repeat(90)),
);
const table = fc.integer({ min: 1, max: 9 }).chain((count) =>
  fc.record({
    columns: fc.array(
      fc.record({
        title: fc.string({ minLength: 1, maxLength: 20, unit: 'grapheme-ascii' }),
        align: fc.constantFrom('left' as const, 'right' as const),
      }),
      { minLength: count, maxLength: count },
    ),
    rows: fc.array(fc.array(cell, { minLength: count, maxLength: count }), { maxLength: 12 }),
  }),
) as fc.Arbitrary<Table>;

const texts = (items: Parameters<typeof leafItems>[0]): TextItem[] =>
  [...leafItems(items)].filter((item): item is TextItem => item.kind === 'text');

describe('tableBlocks', () => {
  it('fills its width exactly, keeps every cell in its column, and loses no letter', () => {
    fc.assert(
      fc.property(table, fc.integer({ min: 120, max: 270 }), (content, widthMm) => {
        const widths = columnWidths(content, widthMm, measure);
        expect(widths.reduce((sum, width) => sum + width, 0)).toBeCloseTo(widthMm, 6);
        const [, ...rows] = tableBlocks(content, widthMm, measure);
        rows.forEach((block, r) => {
          const shown = texts(block.paint([0, 0]));
          for (const item of shown) {
            const [left, top, right, bottom] = textBox(item, measure);
            expect(left).toBeGreaterThanOrEqual(-0.05);
            expect(right).toBeLessThanOrEqual(widthMm + 0.05);
            expect(top).toBeGreaterThanOrEqual(-0.05);
            expect(bottom).toBeLessThanOrEqual(block.heightMm + 0.05);
          }
          const letters = (words: string) => Array.from(words.replace(/\s/g, '')).sort().join('');
          expect(letters(shown.map(({ text }) => text).join(''))).toBe(
            letters(content.rows[r]!.filter((words) => typeof words === 'string').join('')),
          );
        });
      }),
      { seed: 3, numRuns: 80 },
    );
  });

  it('never overlaps two cells of a row', () => {
    const content: Table = {
      columns: [{ title: 'Name' }, { title: 'Length', unit: 'm', align: 'right' }, { title: 'Remarks' }],
      rows: [['A very long name that needs two lines at least', '12,345', 'x'.repeat(200)]],
    };
    const [, row] = tableBlocks(content, 120, measure);
    const boxes = texts(row!.paint([0, 0])).map((item) => textBox(item, measure));
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) {
        const apart = a[2] <= b[0] + 0.01 || b[2] <= a[0] + 0.01 || a[3] <= b[1] + 0.01 || b[3] <= a[1] + 0.01;
        expect(apart).toBe(true);
      }
    });
  });

  it('repeats its head on every page and numbers none of them itself', () => {
    const rows = Array.from({ length: 150 }, (_, i) => [`G${i}`, 'closed']);
    const property = newProperty('Long table');
    const blocks = tableBlocks({ columns: [{ title: 'Gateway' }, { title: 'Stands' }], rows }, 180, measure);
    const pages = textPages('Table', blocks, 'portrait', {
      property,
      date: '2026-05-12',
      measure,
      f: figures('metric'),
    });
    expect(pages.length).toBeGreaterThan(2);
    const [, , , bottom] = textRoom('portrait', property);
    const all = pages.map(({ items }) => texts(items));
    for (const page of all) {
      expect(page.filter(({ text }) => text === 'Gateway')).toHaveLength(1);
      expect(page.some(({ text }) => text.includes('Long table'))).toBe(true);
      expect(page.some(({ text }) => text === '12 May 2026')).toBe(true);
      for (const { text, at } of page) if (/^G\d/.test(text)) expect(at[1]).toBeLessThanOrEqual(bottom);
    }
    expect(
      all
        .flat()
        .filter(({ text }) => /^G\d/.test(text))
        .map(({ text }) => text),
    ).toEqual(rows.map(([name]) => name));
  });
});

describe('wrapText', () => {
  it('gives back every word, in order, on lines that fit', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 200, unit: 'grapheme' }),
        fc.integer({ min: 4, max: 60 }),
        (words, widthMm) => {
          const lines = wrapText(words, widthMm, 'regular', 8, measure);
          const bare = (text: string) => text.replace(/[ \t\n\r]+/g, '');
          expect(bare(lines.join(''))).toBe(bare(words));
          for (const line of lines)
            expect(measure(line, 'regular', 8) <= widthMm || graphemeCount(line) === 1).toBe(true);
        },
      ),
      { seed: 5, numRuns: 200 },
    );
  });
});

function graphemeCount(text: string): number {
  return [...new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text)].length;
}
