import { plainWords } from '../figures.ts';
import { activeHabits, numberFormat } from './locale.ts';
import { type Figure, plain, readFigure, readMeasure, tidy } from './read.ts';
import { fixed, plainFigure } from './write.ts';

const said = () => plainWords().kinds.typed;

/** A field for a figure: what it shows, and what it takes. */
export interface FieldRule {
  readonly label: string;
  /** What is shown behind the field, and what a bare figure is taken for. */
  readonly unit: string;
  /** The unit of the value, min and max, where it is another, and how many of it one of `unit` is: feet shown, metres kept. */
  readonly kept?: { readonly unit: string; readonly perUnit: number };
  readonly decimals: number;
  readonly min: number;
  readonly max: number;
  /** An empty field is allowed and means null. */
  readonly optional: boolean;
}

export type FieldRead = { readonly value: number | null } | { readonly problem: string };

/** What the field shows: decimals as far as they say something, thousands not parted. */
export function fieldText(value: number | null, { decimals, kept }: Pick<FieldRule, 'decimals' | 'kept'>): string {
  return value === null ? '' : plainFigure(value / (kept?.perUnit ?? 1), decimals);
}

/** What a typed text means in a field; a sentence where it means nothing, too much or two things. */
export function readField(text: string, rule: FieldRule): FieldRead {
  if (text.trim() === '') return rule.optional ? { value: null } : { problem: said().missing({ label: rule.label }) };
  const figure = figureIn(text, rule);
  if (!figure) {
    return { problem: said().notANumber({ text: text.trim(), example: plainFigure(4.2, 1) }) };
  }
  const meanings = figure.or === null ? [figure.value] : [figure.value, figure.or];
  const fitting = meanings
    .map((value) => atBound(value, rule))
    .filter((value) => value >= rule.min && value <= rule.max);
  if (fitting.length === 0) return { problem: outOfRange(rule) };
  if (fitting.length > 1)
    return {
      problem: twoMeanings(
        text,
        fitting.map((value) => inUnit(value, rule)),
        rule.unit,
      ),
    };
  return { value: fitting[0]! };
}

/** "= 1,250 m": how a text will be taken, where it is not plain from the figures themselves; null where it is, or where it can't be. */
export function takenAs(text: string, rule: FieldRule): string | null {
  const { decimal } = activeHabits();
  const written = plain(text);
  if (/^[+-]?\d*(?:[.,]\d*)?$/.test(written) && !written.includes(decimal === '.' ? ',' : '.')) return null;
  const read = readField(text, rule);
  if ('problem' in read || read.value === null) return null;
  const shown = numberFormat({ maximumFractionDigits: Math.max(3, rule.decimals) }).format(inUnit(read.value, rule));
  return `= ${shown} ${rule.unit}`.trim();
}

/** A sentence for a text that can mean two figures, in a unit. */
export function twoMeanings(text: string, meanings: readonly number[], unit: string): string {
  const [one, other] = meanings.map((value) => `${plainFigure(value, 9)} ${unit}`.trim());
  return said().twoMeanings({ text: text.trim(), one: one!, other: other! });
}

function figureIn(text: string, { unit, kept }: FieldRule): Figure | null {
  if (!kept) return readMeasure(text, unit);
  const bare = readFigure(text);
  if (!bare) return readMeasure(text, kept.unit);
  const inKept = (value: number) => tidy(value * kept.perUnit);
  return { value: inKept(bare.value), or: bare.or === null ? null : inKept(bare.or) };
}

/** A bound that is typed as it is shown is the bound, though it is rounded: 0.03 ft for the least of 0.01 m. */
function atBound(value: number, rule: FieldRule): number {
  const shown = fieldText(value, rule);
  const bound = [rule.min, rule.max].find((each) => fieldText(each, rule) === shown);
  return bound === undefined || Number(inUnit(bound, rule).toFixed(rule.decimals)) === 0 ? value : bound;
}

function inUnit(value: number, { kept }: FieldRule): number {
  return kept ? tidy(value / kept.perUnit) : value;
}

function outOfRange(rule: FieldRule): string {
  const [min, max] = [inUnit(rule.min, rule), inUnit(rule.max, rule)];
  const from = fixed(min, min % 1 === 0 ? 0 : rule.decimals);
  const to = fixed(max, max % 1 === 0 || max >= 100 ? 0 : rule.decimals);
  return said().outOfRange({ label: rule.label, from, to, unit: rule.unit });
}
