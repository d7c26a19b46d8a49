import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { formatGrid, formatPlace } from '../../../core/coordinates/formatPlace.ts';
import { readGridPlace, readPlace } from '../../../core/coordinates/readPlace.ts';
import { allKinds, fieldsOf } from '../../../core/kinds/allKinds.ts';
import { formOf } from '../../../core/kinds/form.ts';
import { dateText, timeText } from '../../../core/words/dates.ts';
import { figures } from '../../../core/words/figures.ts';
import { message } from '../../../core/words/message.ts';
import { type FieldRule, fieldText, readField, takenAs } from '../../../core/words/numbers/field.ts';
import { activeHabits, setLocale, usualLocale } from '../../../core/words/numbers/locale.ts';
import { readFigure, readLengthM, readMeasure } from '../../../core/words/numbers/read.ts';
import { lengthUnit, m2PerAcre, mPerFoot, mPerMile, type Units } from '../../../core/words/numbers/units.ts';
import {
  fixed,
  formatArea,
  formatBearing,
  formatLength,
  formatMoney,
  formatTape,
  formatVoltage,
  formatWholeLength,
} from '../../../core/words/numbers/write.ts';
import { settled } from '../../../renderer/panels/parts/settled.ts';
import { inEnglish } from '../../support/english.ts';

const locales = ['en-GB', 'en-US', 'de-DE', 'fr-FR', 'de-CH', 'sv-SE', 'en-IN', 'es-ES', 'ar-EG'];

afterEach(() => setLocale(usualLocale));

/** Half of what the last figure of a text stands for. */
function halfLast(text: string): number {
  const { decimal } = activeHabits();
  const figures = text.split(decimal)[1] ?? '';
  return 0.5 * 10 ** -(text.includes(decimal) ? (/^\d+/.exec(figures)?.[0].length ?? 0) : 0);
}

const metres = fc.oneof(
  fc.double({ min: -3_000_000, max: 3_000_000, noNaN: true }),
  fc.double({ min: -3000, max: 3000, noNaN: true }),
  fc.double({ min: -20, max: 20, noNaN: true }),
);
const units = fc.constantFrom<Units>('metric', 'imperial');

interface Quantity {
  readonly write: (value: number, units: Units) => string;
  readonly read: (text: string, units: Units) => number | null;
  /** How much one of the unit that the text is in is, in the value's. */
  readonly size: (text: string) => number;
}

const measure = (text: string, unit: string) => readMeasure(text, unit)?.value ?? null;
const lengthSize = (text: string) =>
  text.endsWith(' km')
    ? 1000
    : text.endsWith(' mi')
      ? mPerMile
      : text.endsWith(' in')
        ? mPerFoot / 12
        : text.endsWith(' ft')
          ? mPerFoot
          : 1;
const readLength = (text: string, system: Units) => readLengthM(text, system)?.value ?? null;

const quantities: Readonly<Record<string, Quantity>> = {
  length: { write: formatLength, read: readLength, size: lengthSize },
  tape: { write: formatTape, read: readLength, size: lengthSize },
  height: { write: formatWholeLength, read: readLength, size: lengthSize },
  area: {
    write: formatArea,
    read: (text) => measure(text, 'm²'),
    size: (text) => (text.endsWith('ha') ? 10_000 : m2PerAcre),
  },
  voltage: {
    write: formatVoltage,
    read: (text) => measure(text, 'V'),
    size: (text) => (text.endsWith('kV') ? 1000 : 1),
  },
  ...Object.fromEntries(
    [
      ['current', 'A', 1],
      ['energy', 'J', 2],
      ['resistance', 'ohm', 1],
      ['resistance by length', 'ohm/km', 2],
      ['resistivity', 'ohm m', 0],
      ['percentage', '%', 1],
      ['count', 'gateways', 0],
      ['degrees', '°', 4],
    ].map(([name, unit, decimals]): [string, Quantity] => [
      name as string,
      {
        write: (value) => `${fixed(value, decimals as number)} ${unit}`,
        read: (text) => measure(text, unit as string),
        size: () => 1,
      },
    ]),
  ),
  money: {
    write: (value) => formatMoney(value, { currency: null }),
    read: (text) => readFigure(text)?.value ?? null,
    size: () => 1,
  },
};

describe.each(locales)('with the habits of %s', (locale) => {
  it.each(Object.keys(quantities))('a %s that is shown can be typed back, and means the same', (name) => {
    const { write, read, size } = quantities[name]!;
    setLocale(locale);
    fc.assert(
      fc.property(metres, units, (value, system) => {
        const shown = write(value, system);
        const back = read(shown, system);
        expect(back, shown).not.toBeNull();
        expect(Math.abs(back! - value), shown).toBeLessThanOrEqual(halfLast(shown) * size(shown) * (1 + 1e-9) + 1e-9);
        expect(write(back!, system)).toBe(shown);
        // Typed with what keyboards have: plain spaces, apostrophes and signs.
        const plain = shown
          .replace(/[\u00a0\u202f]/g, ' ')
          .replace(/’/g, "'")
          .replace(/−/g, '-');
        expect(read(plain, system)).toBe(back);
      }),
      { seed: 4, numRuns: 400 },
    );
  });

  it('so can a bearing and a place', () => {
    setLocale(locale);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.integer({ min: -29, max: 29 }),
        fc.double({ min: -2.9, max: 2.9, noNaN: true }),
        fc.double({ min: 0.1, max: 55, noNaN: true }),
        fc.constantFrom(1, -1),
        (bearingDeg, zone, offDeg, fromEquatorDeg, side) => {
          // Within one zone of UTM, which names its own places only.
          const [lon, lat] = [zone * 6 + 3 + offDeg, fromEquatorDeg * side];
          const bearing = formatBearing(bearingDeg);
          expect(formatBearing(measure(bearing, '°')!)).toBe(bearing);
          for (const style of ['decimal', 'minutes'] as const) {
            const system = { kind: 'degrees', id: style, name: message('coordinates.systems.degrees'), style } as const;
            const shown = formatPlace([lon, lat], system, figures('metric'));
            const read = readPlace(shown, system, null);
            expect(read.lonLat, `${shown}: ${inEnglish(read.problem)}`).not.toBeNull();
            expect(formatPlace(read.lonLat!, system, figures('metric'))).toBe(shown);
          }
          const utm = { kind: 'utm', id: 'utm', name: message('coordinates.systems.utm') } as const;
          const shown = formatPlace([lon, lat], utm, figures('metric'));
          const read = readPlace(shown, utm, [lon, lat]);
          expect(read.lonLat, `${shown}: ${inEnglish(read.problem)}`).not.toBeNull();
          expect(formatPlace(read.lonLat!, utm, figures('metric'))).toBe(shown);
        },
      ),
      { seed: 5, numRuns: 300 },
    );
  });

  it('so can a place on the blank grid', () => {
    setLocale(locale);
    const coordinate = fc.double({ min: -60_000, max: 60_000, noNaN: true });
    fc.assert(
      fc.property(coordinate, coordinate, units, (x, y, system) => {
        const shown = formatGrid([x, y], system);
        const read = readGridPlace(shown, system);
        expect('xy' in read, `${shown}: ${JSON.stringify(read)}`).toBe(true);
        if ('xy' in read) expect(formatGrid(read.xy, system)).toBe(shown);
      }),
      { seed: 6, numRuns: 400 },
    );
  });

  it('what a field shows is read as what it stands for, and left alone changes nothing', () => {
    setLocale(locale);
    const rules: readonly FieldRule[] = [
      {
        label: 'Width',
        unit: 'ft',
        kept: { unit: 'm', perUnit: mPerFoot },
        decimals: 2,
        min: 0,
        max: 1e6,
        optional: false,
      },
      { label: 'Width', unit: 'm', kept: { unit: 'm', perUnit: 1 }, decimals: 2, min: 0, max: 1e6, optional: false },
      { label: 'Energy', unit: 'J', decimals: 1, min: 0, max: 1e6, optional: true },
      { label: 'Price', unit: '', decimals: 2, min: 0, max: 1e9, optional: true },
    ];
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100_000, noNaN: true }), fc.constantFrom(...rules), (value, rule) => {
        const shown = fieldText(value, rule);
        const read = (text: string) => readField(text, rule);
        expect(settled(shown, shown, read)).toBeNull();
        expect(settled(` ${shown} `, shown, read)).toBeNull();
        expect(settled(`${shown} ${rule.unit}`, shown, read)).toBeNull();
        expect(takenAs(shown, rule)).toBeNull();
        const back = read(shown);
        expect(back).toHaveProperty('value');
        expect(fieldText((back as { value: number }).value, rule)).toBe(shown);
        // With its thousands parted, as it stands elsewhere on the screen.
        const parted = read(`${fixed(value / (rule.kept?.perUnit ?? 1), rule.decimals)} ${rule.unit}`);
        if (!('problem' in parted)) expect(parted).toEqual(back);
      }),
      { seed: 7, numRuns: 600 },
    );
  });
});

/** Every length and figure that a form of the window asks for, as its field takes it. */
const described = allKinds.flatMap(({ kind }) =>
  formOf(fieldsOf(kind)).flatMap(([name, { as, unit, min, max, above, decimals }]) =>
    as === 'length' || as === 'number'
      ? [{ path: `${kind}.${name}`, as, label: name, unit, min: above ? min + Number.EPSILON : min, max, decimals }]
      : [],
  ),
);

describe('the fields of the window', () => {
  it('are there', () => expect(described.length).toBeGreaterThan(40));

  it.each(locales)('show what can be typed back, and left alone change nothing, with the habits of %s', (locale) => {
    setLocale(locale);
    fc.assert(
      fc.property(
        fc.constantFrom(...described),
        fc.double({ min: 0, max: 1, noNaN: true }),
        units,
        (field, share, system) => {
          const { name, lengthM } = lengthUnit(system);
          const rule: FieldRule = {
            ...field,
            optional: false,
            ...(field.as === 'length' ? { unit: name, kept: { unit: 'm', perUnit: lengthM } } : {}),
          };
          // Small figures as often as large ones.
          const value = field.min + (field.max - field.min) * share ** 6;
          const shown = fieldText(value, rule);
          const read = (text: string) => readField(text, rule);
          expect(settled(shown, shown, read), field.path).toBeNull();
          const back = read(shown);
          // A little that is shown as nothing is refused where there must be something.
          if ('problem' in back)
            expect([shown, back.problem]).toEqual(['0', expect.stringMatching(/must lie between/)]);
          else {
            expect(fieldText(back.value, rule), field.path).toBe(shown);
            expect(settled(`${shown} ${rule.unit}`, shown, read), field.path).toBeNull();
          }
        },
      ),
      { seed: 8, numRuns: 2000 },
    );
  });
});

describe('a text that can mean two figures', () => {
  const rule: FieldRule = { label: 'Length', unit: 'm', decimals: 2, min: 0, max: 1e6, optional: false };

  it.each([
    ['de-DE', '1.234', '“1.234” can mean 1234 m or 1,234 m. Type it in one of these two ways.'],
    ['fr-FR', '1.250 m', '“1.250 m” can mean 1250 m or 1,25 m. Type it in one of these two ways.'],
    ['de-CH', '1,250', '“1,250” can mean 1250 m or 1.25 m. Type it in one of these two ways.'],
  ])('is asked about: %s %s', (locale, text, problem) => {
    setLocale(locale);
    expect(readField(text, rule)).toEqual({ problem });
  });

  it.each([
    ['de-DE', '1234', 1234],
    ['de-DE', '1,234', 1.234],
    ['de-DE', '1.5', 1.5],
    ['de-DE', '1.234,5', 1234.5],
    ['de-DE', '1,234.5', 1234.5],
    ['de-DE', '1.234.567', 1_234_567],
    ['de-DE', '0.250', 0.25],
    ['fr-FR', '1\u202f250,5', 1250.5],
    ['fr-FR', '1 250', 1250],
    ['de-CH', '1’250.5', 1250.5],
    ['sv-SE', '1\u00a0250', 1250],
    ['en-GB', '1,250', 1250],
    ['en-GB', '1.250', 1.25],
    ['en-GB', '5 km', 5000],
    ['en-GB', '45 cm', 0.45],
    ['en-GB', '12.3 cm', 0.123],
    ['de-DE', '1,2 km', 1200],
  ])('is not, where it can mean one: %s %s', (locale, text, value) => {
    setLocale(locale);
    expect(readField(text, { ...rule, max: 1e7 })).toEqual({ value });
  });

  it('is not, where it is a bound as it is shown', () => {
    const tape: FieldRule = { ...rule, unit: 'ft', kept: { unit: 'm', perUnit: mPerFoot }, min: 0.01, max: 5 };
    expect(readField('0.03', tape)).toEqual({ value: 0.01 });
    expect(readField('16.4', tape)).toEqual({ value: 5 });
    expect(readField('0.02', tape)).toHaveProperty('problem');
    expect(readField('0', { ...tape, min: Number.EPSILON })).toHaveProperty('problem');
  });

  it('is not, where the field takes only one of them', () => {
    setLocale('de-DE');
    expect(readField('1.234', { ...rule, max: 10 })).toEqual({ value: 1.234 });
    expect(readField('1.234', { ...rule, min: 10 })).toEqual({ value: 1234 });
  });

  it('shows how it is taken, where that is not plain', () => {
    const inFeet: FieldRule = { ...rule, unit: 'ft', kept: { unit: 'm', perUnit: mPerFoot } };
    expect(takenAs('1,250', rule)).toBe('= 1,250 m');
    expect(takenAs('5 km', rule)).toBe('= 5,000 m');
    expect(takenAs('3 m', inFeet)).toBe('= 9.843 ft');
    expect(takenAs('1250', rule)).toBeNull();
    expect(takenAs('four', rule)).toBeNull();
    expect(readField('3 m', inFeet)).toEqual({ value: 3 });
  });
});

describe('days and times', () => {
  it.each([
    ['en-GB', '12 May 2026', '14:05'],
    ['en-US', 'May 12, 2026', '02:05 PM'],
    ['de-DE', '12.05.2026', '14:05'],
    ['fr-FR', '12/05/2026', '14:05'],
    ['sv-SE', '2026-05-12', '14:05'],
  ])('of %s', (locale, day, time) => {
    setLocale(locale);
    expect(dateText('2026-05-12T14:05')).toBe(day);
    expect(timeText('2026-05-12T14:05').replace(/\s/g, ' ')).toBe(time);
    expect(dateText('soon')).toBe('soon');
    expect(dateText('2026-13-40')).toBe('2026-13-40');
  });

  it('a tag that nobody knows leaves the usual habits', () => {
    setLocale('de-DE');
    setLocale('not a tag');
    expect(fixed(1234.5, 1)).toBe('1,234.5');
  });
});
