import { activeHabits, numberFormat } from './locale.ts';
import { lengthNames, lengthUnit, mPerFoot, mPerInch, quantities, type Units } from './units.ts';

/** What a typed figure means. */
export interface Figure {
  readonly value: number;
  /** What the same text means by other habits that are as likely ("1.234" where points part thousands); null: nothing else. */
  readonly or: number | null;
}

/**
 * The number that a typed text means; null where it is none. It reads whatever `write.ts` writes, by the habits of the
 * active locale first, and the other usual ways where they can't be mistaken: "1,250.5", "1.250,5", "1 250" and "1'250".
 * One sign with three figures behind it is the active locale's decimal sign, or else parts thousands, unless none could
 * stand before it ("0,250", "1234,567"). A point that the active locale does not use so, or takes for thousands while
 * half the world takes it for the decimal sign, leaves a doubt (`or`).
 */
export function readFigure(text: string): Figure | null {
  const parts = /^([+-]?)\s*(\d[\d., ']*|[.,]\d+)$/.exec(plain(text));
  if (!parts) return null;
  const read = figuresOf(parts[2]!);
  if (!read) return null;
  const signed = (figures: string): number => {
    const value = Number(figures);
    return parts[1] === '-' && value !== 0 ? -value : value;
  };
  return { value: signed(read[0]), or: read[1] === null ? null : signed(read[1]) };
}

/** Figures with a point for decimals and no thousands: as meant, and as else they could be meant. */
function figuresOf(text: string): readonly [string, string | null] | null {
  const written = text.trim();
  if (/[ ']/.test(written)) {
    const grouped = /^\d{1,3}(?:( |')\d{3})(?:\1\d{3})*(?:[.,]\d*)?$/.test(written);
    return grouped ? [written.replace(/[ ']/g, '').replace(',', '.'), null] : null;
  }
  const signs = written.replace(/\d/g, '');
  if (signs === '') return [written, null];
  const [first, last] = [signs[0]!, signs.at(-1)!];
  if (first !== last) {
    const [whole, fraction] = [written.slice(0, written.indexOf(last)), written.slice(written.indexOf(last) + 1)];
    if (/[.,]/.test(fraction) || !isGrouped(whole, first)) return null;
    return [`${whole.replaceAll(first, '')}.${fraction}`, null];
  }
  if (signs.length > 1) return isGrouped(written, first) ? [written.replaceAll(first, ''), null] : null;
  const asDecimal = written.replace(first, '.');
  const { decimal, group } = activeHabits();
  const couldPart = /^[1-9]\d{0,2}[.,]\d{3}$/.test(written);
  if (first === decimal || !couldPart) return [asDecimal, null];
  return [written.replace(first, ''), first === '.' || first !== group ? asDecimal : null];
}

/** Whether thousands are parted by the sign, in threes or as the active locale does it ("12,34,567"). */
function isGrouped(whole: string, sign: string): boolean {
  const groups = whole.split(sign);
  if (groups[0] === '' || groups[0]!.length > 3) return false;
  if (groups.slice(1).every((figures) => figures.length === 3)) return true;
  return sign === activeHabits().group && numberFormat({}).format(BigInt(groups.join(''))) === whole;
}

/** The number alone, for text that is not a person's answer just now; null where it is none or can mean two. */
export function readNumber(text: string): number | null {
  const figure = readFigure(text);
  return figure === null || figure.or !== null ? null : figure.value;
}

/** A number whose commas and points are decimal signs, where no thousands can stand: an angle. Null where it is none. */
export function readDecimal(text: string): number | null {
  const written = plain(text);
  return /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/.test(written) ? Number(written.replace(',', '.')) : null;
}

/**
 * A number in a file. Files know nothing of the reader's locale: `comma` says whether a lone comma is a decimal sign
 * (a table whose cells are parted by semicolons) or, with three figures behind it, parts thousands; a lone point is
 * always the decimal sign. Null where it is none.
 */
export function readFileNumber(text: string, comma: 'decimal' | 'thousands' = 'thousands'): number | null {
  const written = plain(text);
  const single = /^([+-]?)(\d*)([.,])(\d*)$/.exec(written);
  const parts = comma === 'thousands' && /^[+-]?[1-9]\d{0,2},\d{3}$/.test(written);
  if (single && !parts) return readDecimal(written);
  const figure = readFigure(parts ? written.replace(',', '') : written);
  return figure?.value ?? null;
}

/**
 * A figure in `unit`, typed bare or with a unit behind it: its own, or another of the same quantity ("5 km" where metres
 * are asked for, "8 ft 6 in", "4100 V" for kilovolts). Null where it is none.
 */
export function readMeasure(text: string, unit: string): Figure | null {
  return measureOf(text, unit, readFigure);
}

/** The same of a text in a file, which knows nothing of the reader's locale. */
export function readFileMeasure(text: string, unit: string): number | null {
  const inFile = (figures: string): Figure | null => {
    const value = readFileNumber(figures);
    return value === null ? null : { value, or: null };
  };
  return measureOf(text, unit, inFile)?.value ?? null;
}

type ReadFigure = (text: string) => Figure | null;

function measureOf(text: string, unit: string, read: ReadFigure): Figure | null {
  const written = plain(text);
  const own = plain(unit);
  const bare = read(written);
  if (bare) return bare;
  if (own !== '' && written.endsWith(own)) {
    const inOwn = read(written.slice(0, -own.length));
    if (inOwn) return inOwn;
  }
  const known = quantities.find((units) => own in units);
  if (!known) return null;
  const inM = known === lengthNames ? feetAndInchesM(written, read) : null;
  return inM !== null ? { value: tidy(inM / known[own]!), or: null } : withUnit(written, known, known[own]!, read);
}

function withUnit(
  written: string,
  known: Readonly<Record<string, number>>,
  size: number,
  read: ReadFigure,
): Figure | null {
  const parts = /^([+-]?(?:\d[\d., ']*|[.,]\d+))(\D.*)$/.exec(written);
  if (!parts) return null;
  // "12'500 m" has its apostrophe among the figures, "8' " behind them.
  const apostrophe = /'\s*$/.test(parts[1]!) ? "'" : '';
  const name = `${apostrophe}${parts[2]!}`.trim();
  const factor = known[name];
  const figure = read(apostrophe ? parts[1]!.replace(/'\s*$/, '') : parts[1]!);
  if (factor === undefined || !figure) return null;
  const inUnit = (value: number) => tidy((value * factor) / size);
  return { value: inUnit(figure.value), or: figure.or === null ? null : inUnit(figure.or) };
}

/** "8 ft 6 in", "8' 6\"", "8 ft 6", "8'6". */
function feetAndInchesM(written: string, read: ReadFigure): number | null {
  const parts = /^([+-]?)(\d[\d., ']*?)\s*(?:ft|feet|foot|')\s*(\d{1,2}(?:[.,]\d+)?)\s*(?:in|inch|inches|")?$/.exec(
    written,
  );
  const [feet, inches] = [parts ? (read(parts[2]!)?.value ?? null) : null, parts && readDecimal(parts[3]!)];
  if (feet === null || inches === null || feet % 1 !== 0 || inches >= 12) return null;
  return (parts![1] === '-' ? -1 : 1) * (feet * mPerFoot + inches * mPerInch);
}

/** A length in metres; without a unit, metres or feet as the screen shows. Null where it is none. */
export function readLengthM(text: string, units: Units): Figure | null {
  const inM = readMeasure(text, 'm');
  const { lengthM } = lengthUnit(units);
  if (!inM || lengthM === 1 || !readFigure(text)) return inM;
  return { value: tidy(inM.value * lengthM), or: inM.or === null ? null : tidy(inM.or * lengthM) };
}

/** Without the last figures that come of reckoning in binary: 12.3 cm is 0.123 m. */
export function tidy(value: number): number {
  return Number(value.toPrecision(14));
}

/** Typographic signs and full-width figures as the plain ones, small letters. */
export function plain(text: string): string {
  return text
    .replace(/[\uff01-\uff5e]/g, (sign) => String.fromCharCode(sign.charCodeAt(0) - 0xfee0))
    .trim()
    .toLowerCase()
    .replace(/[−–‒\u2011]/g, '-')
    .replace(/[\s\u00a0\u2007\u2009\u202f]+/g, ' ')
    .replace(/[\u200e\u200f]/g, '')
    .replace(/[′’‘]/g, "'")
    .replace(/[″”“]|''/g, '"')
    .replace(/[º˚]/g, '°');
}
