import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readFigure } from '../../../core/exchange/csv/readCsv.ts';
import { figureOf } from '../../../core/exchange/preview/suggest.ts';
import * as reading from '../../../core/words/numbers/read.ts';
import {
  fixed,
  formatArea,
  formatBearing,
  formatLength,
  formatTape,
  formatVoltage,
  type Units,
} from '../../../core/words/numbers/write.ts';
import { typedBearingDeg, typedLengthM } from '../../../renderer/map/interaction/typedMeasures.ts';

const { readNumber, readDecimal } = reading;
const readMeasure = (text: string, unit: string) => reading.readMeasure(text, unit)?.value ?? null;
const readLengthM = (text: string, units: Units) => reading.readLengthM(text, units)?.value ?? null;

describe('a typed number', () => {
  it.each([
    ['1,250', 1250],
    ['1,250.5', 1250.5],
    ['1.250,5', 1250.5],
    ['1 250', 1250],
    ['1\u00a0250,5', 1250.5],
    ['1,234,567', 1_234_567],
    ['1.234.567', 1_234_567],
    ['1.234.567,8', 1_234_567.8],
    ['4,2', 4.2],
    ['1,25', 1.25],
    ['0,250', 0.25],
    ['1234,567', 1234.567],
    ['1 250,500', 1250.5],
    ['1.250', 1.25],
    ['.5', 0.5],
    [',5', 0.5],
    ['5.', 5],
    ['-1,250', -1250],
    ['−3', -3],
    ['+7', 7],
    [' 12 ', 12],
  ])('“%s” is %d', (text, value) => expect(readNumber(text)).toBe(value));

  it.each([
    '',
    ' ',
    '-',
    'ten',
    '1e3',
    '12 34',
    '1,25.5',
    '1,250,5',
    '1.25.5',
    '1 2 3',
    '1,,2',
    '0x10',
    'Infinity',
    '4m',
  ])('“%s” is none', (text) => expect(readNumber(text)).toBeNull());

  it('where no thousands can stand, every comma is a decimal one', () => {
    expect(readDecimal('1,250')).toBe(1.25);
    expect(readDecimal('1.234,50')).toBeNull();
  });
});

describe('a figure with its unit', () => {
  it.each([
    ['5 km', 'm', 5000],
    ['45 cm', 'm', 0.45],
    ['8 ft 6 in', 'ft', 8.5],
    ['8\' 6"', 'ft', 8.5],
    ['8′6″', 'in', 102],
    ['8 ft 6', 'ft', 8.5],
    ["8'6", 'ft', 8.5],
    ['450 mm', 'm', 0.45],
    ['2.4 mi', 'm', 3862.4256],
    ['1.2 ha', 'm²', 12_000],
    ['3 ac', 'm²', 12_140.5692672],
    ['4500 V', 'kV', 4.5],
    ['12 J', 'J', 12],
    ['１２．５ ｍ', 'm', 12.5],
    ['-3 ft 2 in', 'ft', -(3 + 2 / 12)],
    ['1,250 mm', 'm', 1.25],
    ['1 in', 'mm', 25.4],
    ['4100 V', 'kV', 4.1],
    ['4,1 kV', 'V', 4100],
    ['12.5 ohm/km', 'ohm/km', 12.5],
    ['15 %', '%', 15],
    ['92.5°', '°', 92.5],
    ['4', 'gateways', 4],
  ])('%s in %s', (text, unit, value) => expect(readMeasure(text, unit)).toBeCloseTo(value, 9));

  it.each([
    ['5 kV', 'm'],
    ['12 furlongs', 'm'],
    ['2 chain', 'm'],
    ['8 ft 14 in', 'm'],
    ['8.5 ft 6 in', 'm'],
    ['3 m', 'gateways'],
    ['8 ft 6 in', 'kV'],
  ])('%s is none in %s', (text, unit) => expect(readMeasure(text, unit)).toBeNull());
});

describe('what is shown can be typed, and means the same', () => {
  const value = fc.oneof(
    fc.double({ min: -20_000_000, max: 20_000_000, noNaN: true }),
    fc.double({ min: -3000, max: 3000, noNaN: true }),
    fc.integer({ min: -2_000_000, max: 2_000_000 }),
  );
  const units = fc.constantFrom<Units>('metric', 'imperial');

  it('numbers, with as many decimals as you like', () => {
    fc.assert(
      fc.property(value, fc.nat(9), (figure, decimals) => {
        const shown = fixed(figure, decimals);
        expect(readNumber(shown)).toBe(Number(figure.toFixed(decimals)) || 0);
        expect(readNumber(shown.replaceAll(',', ' '))).toBe(readNumber(shown));
      }),
      { seed: 1, numRuns: 3000 },
    );
  });

  /** Half of what the last figure shown stands for, in the unit that is shown. */
  const halfLast = (shown: string): number => 0.5 * 10 ** -(/\.(\d+)/.exec(shown)?.[1]?.length ?? 0);

  it('lengths, areas, bearings and voltages, metric and imperial', () => {
    fc.assert(
      fc.property(value, units, (figure, system) => {
        const isRead = (shown: string, read: number | null, perUnit: number, exact = figure) => {
          expect(read, shown).not.toBeNull();
          expect(Math.abs(read! - exact), shown).toBeLessThanOrEqual(halfLast(shown) * perUnit * (1 + 1e-9) + 1e-9);
        };
        const length = formatLength(figure, system);
        const perM = length.endsWith(' in') ? 0.0254 : readMeasure(`1 ${length.split(' ').at(-1)}`, 'm')!;
        isRead(length, readLengthM(length, system), perM);
        isRead(length, readMeasure(length, 'ft')! * 0.3048, perM);
        const tape = formatTape(figure, system);
        isRead(tape, readLengthM(tape, system), system === 'metric' ? 1 : 0.3048);
        const area = formatArea(figure, system);
        isRead(area, readMeasure(area, 'm²'), system === 'metric' ? 10_000 : 4046.8564224);
        const voltage = formatVoltage(figure);
        isRead(voltage, readMeasure(voltage, 'V'), voltage.endsWith(' kV') ? 1000 : 1);
        isRead(voltage, readMeasure(voltage, 'kV')! * 1000, voltage.endsWith(' kV') ? 1000 : 1);
        const bearing = formatBearing(figure);
        expect(formatBearing(readMeasure(bearing, '°')!)).toBe(bearing);
      }),
      { seed: 2, numRuns: 3000 },
    );
  });

  it('on the map, too', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 150_000, noNaN: true }), units, (lengthM, system) => {
        const shown = formatLength(lengthM, system);
        expect(typedLengthM(shown, system)).toBe(readLengthM(shown, system));
      }),
      { seed: 3, numRuns: 1000 },
    );
    expect(typedLengthM('1,250', 'metric')).toBe(1250);
    expect(typedLengthM('1,250.5 ft', 'metric')).toBeCloseTo(1250.5 * 0.3048, 9);
    expect(typedBearingDeg('92,5')).toBe(92.5);
  });
});

describe('figures in files', () => {
  it('are read by the same rules, and by the habit of the table', () => {
    expect(readFigure('1,250', false)).toBe(1250);
    expect(readFigure('1,250', true)).toBe(1.25);
    expect(readFigure('0,250', false)).toBe(0.25);
    expect(readFigure('1.234,50', true)).toBe(1234.5);
    expect(readFigure('1.234', true)).toBe(1.234);
  });

  it('keep their thousands and their units where they are only words beside a thing', () => {
    const of = (value: unknown, unit: string) => figureOf({ width: value } as never, ['width'], unit, [0, 1e6]);
    expect(of('11,000 V', 'V')).toBe(11_000);
    expect(of('11 kV', 'V')).toBe(11_000);
    expect(of('14 ft', 'm')).toBeCloseTo(4.2672, 9);
    expect(of('4.2 m (taped)', 'm')).toBe(4.2);
    expect(of('4.2 metres', 'm')).toBe(4.2);
    expect(of('wide', 'm')).toBeNull();
    expect(of(4.2, 'm')).toBe(4.2);
  });
});
