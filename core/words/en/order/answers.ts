import type { Figures } from '../../types.ts';

/** What the whole comes to; money and amounts are written already. */
type Whole = {
  readonly gross: string;
  readonly goods: string;
  readonly work: string;
  readonly tax: string | null;
  /** Null: no fence is built. */
  readonly fenceM: number | null;
  readonly stages: number;
  readonly items: number;
  readonly unpriced: number;
};

/** The answer of Order. */
export const sentence = {
  nothing: 'Nothing is planned that would have to be ordered.',
  whole: ({ gross, goods, work, tax, fenceM, stages, items, unpriced }: Whole, f: Figures) => {
    const fence = fenceM === null ? '' : ` for ${f.length(fenceM)} of fence`;
    const staged = stages > 0 ? ` in ${f.number(stages)} ${f.plural(stages, { one: 'stage', other: 'stages' })}` : '';
    const bought = `${f.number(items)} ${f.plural(items, { one: 'item', other: 'items' })}`;
    const taxed = tax === null ? '' : ` and ${tax} of tax`;
    const open = unpriced > 0 ? `; ${f.number(unpriced)} without a price are not in it` : '';
    return `${gross}${fence}${staged}: ${bought} for ${goods}, work for ${work}${taxed}${open}.`;
  },
};

/** How an item is packed. */
export const pack = {
  each: 'each',
  of: ({ size }: { size: number }, f: Figures) => `pack of ${f.number(size, Number.isInteger(size) ? 0 : 1)}`,
};

/** Said of coils of fence wire. */
export const wireNote = 'Lengths of coils are worked out from mass and gauge: what the label says goes before them.';

/** Which piece is cut from which roll. */
export const cutList = {
  sum: ({ pieces, cut, rolls, left }: { pieces: number; cut: string; rolls: number; left: string }, f: Figures) => {
    const counted = `${f.number(pieces)} ${f.plural(pieces, { one: 'piece', other: 'pieces' })}`;
    const from = `${f.number(rolls)} ${f.plural(rolls, { one: 'roll', other: 'rolls' })}`;
    return `${counted}, ${cut}, from ${from}; ${left} left over.`;
  },
  roll: ({ number }: { number: number }, f: Figures) => `Roll ${f.number(number)}`,
  onHand: 'on hand',
  leftOver: 'left over',
  /** What the user wrote of a roll on hand. */
  noted: ({ note }: { note: string }) => note,
  withoutRoll: 'Not all pieces have a roll.',
  proven: 'Proven: no way to cut buys, opens or wastes less.',
  provenOthers: 'Proven: no way to cut the others buys, opens or wastes less.',
  notProvenFewest: ({ least }: { least: number }, f: Figures) =>
    `Not proven best: no way to cut opens fewer than ${f.number(least)} rolls.`,
  notProvenLeast: 'No way to cut opens fewer rolls; that none wastes less is not proven.',
};

/** The name of a kept plan that was given none. */
export const plan = ({ mark }: { mark: string }) => `Plan ${mark}`;
