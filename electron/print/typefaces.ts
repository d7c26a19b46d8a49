import { createRequire } from 'node:module';
import { type Font, openSync } from 'fontkit';
import type { FontRole } from '../../core/drawing/displayList.ts';
import { mmPerPt } from '../../core/drawing/style.ts';
import type { MeasureText } from '../../core/drawing/words.ts';

/**
 * The sheets' typeface, Atkinson Hyperlegible (SIL Open Font License 1.1): each cut comes as two files, basic Latin and
 * Latin with further accents. Pairs are kerned in both measuring and drawing, so that the two agree.
 */
const packageName = '@fontsource/atkinson-hyperlegible';
const cuts = { regular: '400-normal', bold: '700-normal', italic: '400-italic' } as const;
const scripts = ['latin', 'latin-ext'] as const;

/** Shown for a letter that the typeface does not have. PDF/A allows no reference to a font's own box for missing letters. */
const missing = '?';

/** Letters of one font file, in a row. */
export interface FontRun {
  readonly fontName: string;
  readonly font: Font;
  readonly text: string;
  readonly features: readonly string[];
}

export interface Typefaces {
  /** By name; names are stable. */
  readonly fonts: ReadonlyMap<string, Font>;
  /** A line of text as runs, each in the file that has its letters; letters that none has are replaced. */
  readonly runs: (text: string, role: FontRole) => readonly FontRun[];
  readonly measure: MeasureText;
}

/** Widths and runs remembered; a set of sheets has a few thousand different texts. */
const mostRemembered = 50_000;

let opened: Typefaces | undefined;

/** The typeface, opened once. */
export function typefaces(): Typefaces {
  opened ??= openTypefaces();
  return opened;
}

function openTypefaces(): Typefaces {
  const require = createRequire(import.meta.url);
  const fonts = new Map<string, Font>();
  for (const cut of Object.values(cuts)) {
    for (const script of scripts) {
      const file = `${packageName}/files/atkinson-hyperlegible-${script}-${cut}.woff`;
      const font = openSync(require.resolve(file));
      if (!('layout' in font)) throw new Error(`${file} holds several fonts; one is wanted.`);
      fonts.set(`${script}-${cut}`, font);
    }
  }
  const runsOf = remembered((text: string, role: FontRole) => splitRuns(text, role, fonts));
  const widthOf = remembered((text: string, role: FontRole) =>
    runsOf(text, role).reduce((sum, run) => sum + runWidthEm(run), 0),
  );
  return { fonts, runs: runsOf, measure: (text, role, sizePt) => widthOf(text, role) * sizePt * mmPerPt };
}

/**
 * Width of a run as a share of the letter size. Words are set one by one, each with the space after it, as pdfkit sets
 * runs without features, so that measured and drawn widths are the same.
 */
export function runWidthEm({ font, text, features }: FontRun): number {
  if (features.length > 0) return font.layout(text, [...features]).advanceWidth / font.unitsPerEm;
  return text.split(/(?<= )/).reduce((sum, word) => sum + wordWidthEm(font, word), 0);
}

const wordWidths = new WeakMap<Font, Map<string, number>>();

function wordWidthEm(font: Font, word: string): number {
  let known = wordWidths.get(font);
  if (!known || known.size > mostRemembered) {
    known = new Map();
    wordWidths.set(font, known);
  }
  const width = known.get(word) ?? font.layout(word).advanceWidth / font.unitsPerEm;
  known.set(word, width);
  return width;
}

function splitRuns(text: string, role: FontRole, fonts: ReadonlyMap<string, Font>): FontRun[] {
  const cut = cuts[role === 'figures' ? 'regular' : role];
  const features = role === 'figures' ? ['tnum'] : [];
  const runs: FontRun[] = [];
  for (const { segment } of new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(printable(text))) {
    const { fontName, letters } = inSomeFont(segment, cut, fonts);
    const last = runs.at(-1);
    if (last?.fontName === fontName) runs[runs.length - 1] = { ...last, text: last.text + letters };
    else runs.push({ fontName, font: fonts.get(fontName)!, text: letters, features });
  }
  return runs;
}

/** The letters of a text that take ink or room: composed where that can be, without control characters. */
function printable(text: string): string {
  return text
    .normalize('NFC')
    .replace(/\s/g, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Variation_Selector}]/gu, '');
}

/**
 * The font file that has a letter: as it is, else taken apart into base and accents that the font sets together (a
 * macron on o, say), else its base alone, else a question mark.
 */
function inSomeFont(
  letter: string,
  cut: string,
  fonts: ReadonlyMap<string, Font>,
): { fontName: string; letters: string } {
  const apart = letter.normalize('NFD');
  const base = apart.replace(/\p{M}/gu, '');
  for (const letters of [letter, apart, base]) {
    if (letters === '') continue;
    for (const script of scripts) {
      const fontName = `${script}-${cut}`;
      if (hasAll(fonts.get(fontName)!, letters)) return { fontName, letters };
    }
  }
  return { fontName: `latin-${cut}`, letters: missing };
}

function hasAll(font: Font, letters: string): boolean {
  return Array.from(letters).every((letter) => font.hasGlyphForCodePoint(letter.codePointAt(0)!));
}

function remembered<T>(work: (text: string, role: FontRole) => T): (text: string, role: FontRole) => T {
  const known = new Map<string, T>();
  return (text, role) => {
    const key = `${role} ${text}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    if (known.size >= mostRemembered) known.clear();
    const made = work(text, role);
    known.set(key, made);
    return made;
  };
}
