import type { Figures, Phrase } from '../../types.ts';

type Limits = { readonly lowBelowV: number; readonly goodFromV: number };
type Shares = { readonly goodShare: number; readonly lowShare: number };

/** Where a reading is taken: here, at a place by its name, or in words. */
export type ReadAt = 'here' | 'atEnergiser' | 'beside' | 'supplySide' | { readonly at: string };

const places = {
  here: 'here',
  atEnergiser: 'at the energiser',
  beside: 'beside it',
  supplySide: 'on the energiser’s side',
};

const placed = (where: ReadAt) => (typeof where === 'string' ? places[where] : `at ${where.at}`);
const limits = ({ lowBelowV, goodFromV }: Limits, f: Figures) =>
  `under ${f.volts(lowBelowV)} is low, from ${f.volts(goodFromV)} good`;
const percent = (share: number, f: Figures) => `${f.number(share * 100, 0)} %`;

/** What a reading is judged by. */
export const yardstick = {
  own: (values: Limits, f: Figures) => `Judged by the limits of this search; ${limits(values, f)}.`,
  notKnown: ({ where, ...values }: Limits & { where: ReadAt }, f: Figures) =>
    `What is usual ${placed(where)} is not known, so only what holds the stock counts; ${limits(values, f)}.`,
  usual: (
    { where, usual, switches, ...values }: Limits & { where: ReadAt; usual: Phrase; switches: Phrase },
    f: Figures,
  ) => `Usual ${placed(where)}: ${f.say(usual)} ${f.say(switches)}; ${limits(values, f)}.`,
  read: ({ usualV, on }: { usualV: number; on: string }, f: Figures) => `${f.volts(usualV)}, read on ${f.date(on)}`,
  estimated: ({ usualV }: { usualV: number }, f: Figures) => `${f.volts(usualV)}, estimated`,
  /** How the switches stand. */
  asNormal: 'with the switches as they normally stand',
  manyOff: ({ count }: { count: number }, f: Figures) => `with ${f.number(count)} switches off`,
  off: ({ names }: { names: readonly (string | null)[] }) =>
    `with ${names.map((name) => name ?? 'a switch that is gone').join(', ')} off`,
  explained: ({ goodShare, lowShare }: Shares, f: Figures) =>
    `What is usual is an earlier good reading at the same place with the same switches off; without one it is the estimate, and an estimate may be off. From ${percent(goodShare, f)} of it on a reading is good, under ${percent(lowShare, f)} it is low, never less than what holds the stock: an assumption (common practice, no source).`,
  /** The same in one line, for a sheet that has to stay one page. */
  inOneLine: ({ goodShare, lowShare }: Shares, f: Figures) =>
    `Usual: read there before with the same switches off, else estimated, and an estimate may be off. Limits (${percent(lowShare, f)}, ${percent(goodShare, f)}): an assumption.`,
};
