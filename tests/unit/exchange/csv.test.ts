import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { neutralise, restore } from '../../../core/exchange/csv/formulaSafety.ts';
import { writeCutLists, writeOrder, writeQuantities } from '../../../core/exchange/csv/orderCsv.ts';
import { readPriceList, takePriceList, writePriceList } from '../../../core/exchange/csv/priceListCsv.ts';
import { readCsv, readFigure } from '../../../core/exchange/csv/readCsv.ts';
import { writeCsv } from '../../../core/exchange/csv/writeCsv.ts';
import { orderOf } from '../../../core/quantities/order/order.ts';
import { priceListOf } from '../../../core/quantities/order/priceList.ts';
import { orderSettingsOf, takeOff } from '../../../core/quantities/takeOff.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { bridgedGateway, drawing, ring } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';

/** A small reader of RFC 4180 of its own, so that what is written is read by something else than its writer. */
function readByTheBook(text: string): string[][] {
  const rows: string[][] = [[]];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const letter = text[i]!;
    if (quoted) {
      if (letter !== '"') cell += letter;
      else if (text[i + 1] === '"') cell += text[i++]!;
      else quoted = false;
    } else if (letter === '"') quoted = true;
    else if (letter === ',') {
      rows.at(-1)!.push(cell);
      cell = '';
    } else if (letter === '\r' && text[i + 1] === '\n') {
      rows.at(-1)!.push(cell);
      cell = '';
      rows.push([]);
      i++;
    } else cell += letter;
  }
  rows.pop();
  return rows;
}

const project = drawing(
  ring('=cmd|F1', [
    [0, 0],
    [100, 0],
    [100, 100],
    [0, 100],
  ]),
  ...bridgedGateway('@SUM(A1)', '=cmd|F1', 50),
);
const settings = orderSettingsOf(project);
const f = figures('metric');
const counted = takeOff({ project, survey: surveyOf(project) });
const prices = priceListOf(project);
const order = orderOf({ project, takeOff: counted, prices, settings });

describe('text for spreadsheets', () => {
  it('is neutralised where it would be a formula, and only there', () => {
    for (const text of ['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', "'=1"]) expect(neutralise(text)).toBe(`'${text}`);
    for (const text of ['G1', '', 'a=b', "'quoted'", ' =1']) expect(neutralise(text)).toBe(text);
  });

  it('comes back as it was', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^'*[=+\-@]/)), (text) => {
        expect(restore(neutralise(text))).toBe(text);
        expect(neutralise(text)).not.toMatch(/^[=+\-@\t\r]/);
      }),
      { seed: 1 },
    );
  });
});

describe('a table as CSV', () => {
  it('is by RFC 4180, whatever the cells hold', () => {
    fc.assert(
      fc.property(fc.array(fc.array(fc.string(), { minLength: 2, maxLength: 2 }), { maxLength: 5 }), (cells) => {
        expect(readByTheBook(writeCsv(['a', 'b'], cells))).toEqual([
          ['a', 'b'],
          ...cells.map((row) => row.map(neutralise)),
        ]);
      }),
      { seed: 2 },
    );
  });

  it('has figures with a point, nothing as nothing, and no powers of ten', () => {
    expect(writeCsv(['a'], [[1234.5], [null], [-2], [1e-7]])).toBe('a\r\n1234.5\r\n\r\n-2\r\n0.000000\r\n');
  });
});

describe('figures in cells', () => {
  it('are read by the habits of both decimal signs', () => {
    expect(readFigure('12.50', false)).toBe(12.5);
    expect(readFigure('12,50', true)).toBe(12.5);
    expect(readFigure('1,234.50', false)).toBe(1234.5);
    expect(readFigure('1.234,50', true)).toBe(1234.5);
    expect(readFigure('1 234,5', true)).toBe(1234.5);
    expect(readFigure('15 %', false)).toBe(15);
    expect(readFigure('', false)).toBeNull();
    expect(readFigure('ten', false)).toBeNaN();
    expect(readFigure('1e9', false)).toBeNaN();
  });
});

describe('a price list', () => {
  const text = writePriceList(prices);

  it('comes back whole', () => {
    const read = readPriceList(text, prices, countingIds());
    expect(read.ok && read.value.leftOut).toEqual([]);
    expect(read.ok && read.value.items).toEqual([...prices.items.values()]);
    expect(read.ok && read.value.kits).toEqual(prices.kits);
    expect(read.ok && read.value.labour).toEqual(prices.labour);
  });

  it('needs no more than names and prices; known names keep their ids, others are added', () => {
    const read = readPriceList('name;price\nStay with block;"19,80"\nRock anchor;7', prices, countingIds());
    expect(read.ok && read.value.items.map(({ id, name, price }) => [id, name, price])).toEqual([
      ['item-stay', 'Stay with block', 19.8],
      ['catalogueItem-1', 'Rock anchor', 7],
    ]);
  });

  it('leaves as it is what the table has no column for', () => {
    const read = readPriceList('name,price\n"Post insulators, bag of 100",40', prices, countingIds());
    const known = prices.items.get('item-insulator')!;
    expect(read.ok && read.value.items).toEqual([{ ...known, price: 40, invented: false }]);
  });

  it('says for each row why it is left out', () => {
    const bad = [
      'row,id,name,serves,unit,pack size,price,part',
      'item,a,Post,post,each,1,cheap,',
      'item,b,,post,each,1,2,',
      'item,c,Post,post,barrel,1,2,',
      'item,d,Post,post,each,0,2,',
      'gift,e,Post,post,each,1,2,',
      'labour,,Walk,hour,,,5,',
      'kit,k,Kit,post,,,,',
      'item,f,Good post,post,each,1,2,',
      'item,f,Again,post,each,1,2,',
    ].join('\r\n');
    const read = readPriceList(bad, prices, countingIds());
    if (!read.ok) throw new Error(inEnglish(read.message));
    expect(read.value.items.map(({ id }) => id)).toEqual(['f']);
    expect(read.value.leftOut.map(({ line }) => line)).toEqual([2, 3, 4, 5, 6, 7, 8, 10]);
    for (const { why } of read.value.leftOut) expect(inEnglish(why)).toMatch(/\.$/);
  });

  it('refuses what is no such table, and says what it found', () => {
    for (const text of ['', '\0\0', 'a,b\n1,2', 'name,price\n"open,3']) {
      const read = readPriceList(text, prices, countingIds());
      expect(read.ok).toBe(false);
      if (!read.ok) expect(inEnglish(read.remedy)).toMatch(/\.$/);
    }
  });

  it('is taken in beside what is there, or in its place', () => {
    const read = readPriceList('name,price\nStay with block,20', prices, countingIds());
    if (!read.ok) throw new Error(inEnglish(read.message));
    const beside = takePriceList(read.value)(project);
    expect(beside.catalogueItem.size).toBe(prices.items.size);
    expect(beside.catalogueItem.get('item-stay')!.price).toBe(20);
    const instead = takePriceList(read.value, true)(project);
    expect(instead.catalogueItem.size).toBe(1);
  });

  it('ends with a word on each of thousands of broken files, and never throws', () => {
    const letters = '",;\r\n\t=\'\0\u2028-0xé';
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(text.length - 1), fc.nat(letters.length - 1)), { maxLength: 30 }),
        (hits) => {
          const broken = text.split('');
          for (const [place, letter] of hits) broken[place] = letters[letter]!;
          const read = readPriceList(broken.join(''), prices, countingIds());
          if (read.ok) expect(read.value.items.length + read.value.leftOut.length).toBeGreaterThan(0);
          else expect(inEnglish(read.message)).not.toBe('');
        },
      ),
      { seed: 3, numRuns: 2000 },
    );
  });
});

describe('the order as CSV', () => {
  it('has the lines of the order, safe against formulas in names', () => {
    const rows = readByTheBook(writeOrder(order, 'EUR', f));
    const [part] = order.parts;
    expect(rows).toHaveLength(1 + part!.lines.length + part!.labour.length);
    expect(rows[0]).toContain('price (EUR)');
    const net = rows[0]!.indexOf('net (EUR)');
    const caution = rows[0]!.indexOf('caution');
    const cables = rows.filter((row) => row[rows[0]!.indexOf('item')]!.startsWith('Fence lead-out cable'));
    expect(cables.length).toBeGreaterThan(0);
    for (const row of cables) expect(row[caution]).toContain('rated 10 kV or more');
    const sum = rows.slice(1).reduce((total, row) => total + Number(row[net]), 0);
    expect(sum).toBeCloseTo(order.total.net, 2);
  });

  it('has quantities with their pieces', () => {
    const rows = readByTheBook(writeQuantities(counted, f)).slice(1);
    expect(rows).toHaveLength(counted.quantities.reduce((sum, { pieces }) => sum + pieces.length, 0));
    const cells = rows.flat();
    expect(cells.some((cell) => cell.startsWith("'=cmd|F1"))).toBe(true);
    expect(cells.some((cell) => /^[=+@]/.test(cell))).toBe(false);
  });

  it('has cut lists with the label of each piece', () => {
    const rows = readByTheBook(writeCutLists(order.parts[0]!.cutLists, f)).slice(1);
    expect(rows.map((row) => row[4])).toEqual(["'@SUM(A1)", "'@SUM(A1)", "'@SUM(A1)"]);
    expect(readCsv(writeCutLists([], f)).ok).toBe(true);
  });
});
