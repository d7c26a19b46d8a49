import type { Units } from './formatUnits.ts';

/**
 * The number that a typed text means; null where it is none. It reads back whatever `formatUnits.ts` writes, and takes
 * the other usual ways too: "1,250" is 1250, "1,250.5" and "1.250,5" are 1250.5, "1 250" is 1250, "4,2" and "1,25" have
 * a decimal comma. One comma with three figures behind it parts thousands, as the app itself writes them, unless no
 * thousands could stand before it ("0,250", "1234,567"); where the text can hold no thousands (an angle, a table that is known to
 * write decimal commas) say so with `comma`. A point alone is always the decimal sign.
 */
export function readNumber(text: string, comma: 'byForm' | 'decimal' = 'byForm'): number | null {
  const parts = /^([+-]?)\s*(\d[\d., ]*|[.,]\d+)$/.exec(plain(text));
  if (!parts) return null;
  const figures = plainFigures(parts[2]!, comma);
  if (figures === null) return null;
  const value = Number(figures);
  if (!Number.isFinite(value)) return null;
  return parts[1] === '-' && value !== 0 ? -value : value;
}

/** Thousands out, the decimal sign a point; null where they stand as no number has them. */
function plainFigures(text: string, comma: 'byForm' | 'decimal'): string | null {
  const written = text.trim();
  const spaced = /^\d{1,3}( \d{3})+(?:[.,]\d*)?$/.test(written);
  if (written.includes(' ')) return spaced ? written.replaceAll(' ', '').replace(',', '.') : null;
  const [commas, points] = [written.split(',').length - 1, written.split('.').length - 1];
  if (commas === 0 && points <= 1) return written;
  if (points > 0 && commas > 0) {
    if (/^\d{1,3}(,\d{3})+\.\d*$/.test(written)) return written.replaceAll(',', '');
    return /^\d{1,3}(\.\d{3})+,\d*$/.test(written) ? written.replaceAll('.', '').replace(',', '.') : null;
  }
  if (points > 1) return /^\d{1,3}(\.\d{3}){2,}$/.test(written) ? written.replaceAll('.', '') : null;
  const thousands = /^[1-9]\d{0,2}(,\d{3})+$/.test(written);
  if (commas > 1) return thousands ? written.replaceAll(',', '') : null;
  return thousands && comma === 'byForm' ? written.replace(',', '') : written.replace(',', '.');
}

const mPerFoot = 0.3048;

/** Units of one kind of quantity, as they may be typed, each with what it is in the first of them. */
const quantities: readonly Readonly<Record<string, number>>[] = [
  {
    m: 1,
    metres: 1,
    meters: 1,
    km: 1000,
    cm: 0.01,
    mm: 0.001,
    ft: mPerFoot,
    feet: mPerFoot,
    "'": mPerFoot,
    in: mPerFoot / 12,
    '"': mPerFoot / 12,
    yd: 3 * mPerFoot,
    mi: 5280 * mPerFoot,
  },
  { v: 1, volts: 1, kv: 1000 },
  { 'm²': 1, m2: 1, ha: 10_000, ac: 4046.8564224 },
  { '°': 1, deg: 1, d: 1 },
];

/**
 * A figure in `unit`, typed bare or with a unit behind it: its own, or another of the same quantity ("5 km" where metres
 * are asked for, "8 ft 6 in", "4100 V" for kilovolts). Null where it is none.
 */
export function readMeasure(text: string, unit: string): number | null {
  const bare = readNumber(text);
  if (bare !== null) return bare;
  const own = plain(unit);
  const written = plain(text);
  if (own !== '' && written.endsWith(own)) {
    const inUnit = readNumber(written.slice(0, -own.length));
    if (inUnit !== null) return inUnit;
  }
  const known = quantities.find((units) => own in units);
  if (!known) return null;
  const inFirst = (known.m === 1 ? feetAndInchesM(written) : null) ?? withUnit(written, known);
  return inFirst === null ? null : inFirst / known[own]!;
}

function withUnit(written: string, known: Readonly<Record<string, number>>): number | null {
  const parts = /^([+-]?[\d., ]*\d[.,]?)\s*([a-z°²'"]+2?)$/.exec(written);
  const factor = known[parts?.[2] ?? ''];
  const figure = parts && readNumber(parts[1]!);
  return factor === undefined || figure === null ? null : figure * factor;
}

/** "8 ft 6 in", "8' 6\"". */
function feetAndInchesM(written: string): number | null {
  const parts = /^([+-]?)([\d, ]*\d)\s*(?:ft|')\s*(\d{1,2}(?:[.,]\d+)?)\s*(?:in|")$/.exec(written);
  const [feet, inches] = [parts && readNumber(parts[2]!), parts && readNumber(parts[3]!)];
  if (feet === null || inches === null || feet % 1 !== 0 || inches >= 12) return null;
  return (parts![1] === '-' ? -1 : 1) * (feet + inches / 12) * mPerFoot;
}

/** A length in metres; without a unit, metres or feet as the screen shows. Null where it is none. */
export function readLengthM(text: string, units: Units): number | null {
  const inM = readMeasure(text, 'm');
  return inM !== null && units === 'imperial' && readNumber(text) !== null ? inM * mPerFoot : inM;
}

/** Typographic signs as the plain ones, small letters. */
function plain(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[−–]/g, '-')
    .replace(/[\s\u00a0\u2009\u202f]+/g, ' ')
    .replace(/[′’‘]/g, "'")
    .replace(/[″”“]|''/g, '"')
    .replace(/[º˚]/g, '°');
}
