import type { Project } from '../../model/project.ts';
import type { CatalogueItem, OrderSettings } from '../../model/things.ts';
import { type Message, message } from '../../words/message.ts';
import { serves } from '../measures.ts';
import { itemsFor, type PriceList } from '../order/priceList.ts';
import type { Quantity } from '../types.ts';
import { packRolls } from './packRolls.ts';
import type { Packing } from './types.ts';

/** A length to be cut, with the label that goes on it. */
export interface Cut {
  readonly label: Message;
  readonly lengthM: number;
  readonly thingIds: readonly string[];
}

/** A roll, or what is left of one, that is there before anything is bought. */
export interface StockRoll {
  readonly measure: string;
  readonly lengthM: number;
  /** What the user notes of it, else on hand or left over. */
  readonly name: Message;
}

/** Where a roll is from: on hand, left over, or bought. */
type RollSource =
  | { readonly bought: false; readonly from: StockRoll }
  | { readonly bought: true; readonly from: CatalogueItem };

export type CutRoll = RollSource & {
  /** By which it is told from the others of its list, from 1. */
  readonly number: number;
  readonly lengthM: number;
  readonly cuts: readonly Cut[];
  /** Left on the roll after all cuts, their losses and the trim. */
  readonly leftM: number;
};

export interface CutList {
  readonly key: string;
  readonly name: Message;
  readonly rolls: readonly CutRoll[];
  /** Longer than every roll that is on hand or for sale: it can't be had without a joint. */
  readonly tooLong: readonly Cut[];
  /** No roll is left for them, and none is for sale. */
  readonly without: readonly Cut[];
  readonly cutM: number;
  readonly leftM: number;
  readonly optimal: boolean;
  readonly least: Packing['least'];
}

/** Cuts are told out in whole centimetres, rounded up. */
const unitsPerM = 100;

export function rollsOnHand(project: Project): StockRoll[] {
  return [...project.rollOnHand.values()].flatMap(({ measure, lengthM, count, note }) =>
    Array<StockRoll>(count).fill({ measure, lengthM, name: nameOnHand(note.trim()) }),
  );
}

function nameOnHand(note: string): Message {
  return note === '' ? message('order.cutList.onHand') : message('order.cutList.noted', { note });
}

/** How each quantity that must not be joined is cut from the rolls that are there and those for sale. */
export function cutLists(
  quantities: readonly Quantity[],
  prices: PriceList,
  stock: readonly StockRoll[],
  settings: OrderSettings,
): CutList[] {
  return quantities.filter(({ cut }) => cut).map((quantity) => cutList(quantity, prices, stock, settings));
}

function cutList(
  { key, name, pieces }: Quantity,
  prices: PriceList,
  stock: readonly StockRoll[],
  { cutLossM, rollTrimM }: OrderSettings,
): CutList {
  const cuts = pieces.map(({ text, amount, thingIds }): Cut => ({ label: text, lengthM: roundUpM(amount), thingIds }));
  const kept = stock.filter(({ measure }) => serves(measure, key));
  const sold = itemsFor(prices, key).filter(({ unit }) => unit === 'm');
  const sources = [
    ...kept.map((from) => ({ roll: { bought: false, from } as const, lengthM: from.lengthM, count: 1 })),
    ...sold.map((from) => ({ roll: { bought: true, from } as const, lengthM: from.packSize, count: Infinity })),
  ];
  // The loss of each cut is part of its piece, so the last cut of a roll may lose more than is there: hence the extra.
  const packing = packRolls(
    cuts.map(({ lengthM }) => units(lengthM + cutLossM)),
    sources.map(({ lengthM, roll: { bought }, count }) => ({
      length: Math.floor((lengthM - rollTrimM + cutLossM) * unitsPerM + 1e-6),
      count,
      bought,
    })),
  );
  const rolls = packing.rolls.map(({ size, pieces: cut }, i): CutRoll => {
    const { roll, lengthM } = sources[size]!;
    const ofRoll = cut.map((piece) => cuts[piece]!);
    const usedM = ofRoll.reduce((sum, piece) => sum + piece.lengthM + cutLossM, 0) + rollTrimM;
    return { ...roll, number: i + 1, lengthM, cuts: ofRoll, leftM: Math.max(0, lengthM - usedM) };
  });
  return {
    key,
    name,
    rolls,
    tooLong: packing.tooLong.map((piece) => cuts[piece]!),
    without: packing.without.map((piece) => cuts[piece]!),
    cutM: cuts.reduce((sum, { lengthM }) => sum + lengthM, 0),
    leftM: rolls.reduce((sum, { leftM }) => sum + leftM, 0),
    optimal: packing.optimal,
    least: packing.least,
  };
}

function units(lengthM: number): number {
  return Math.ceil(lengthM * unitsPerM - 1e-6);
}

function roundUpM(lengthM: number): number {
  return units(lengthM) / unitsPerM;
}

/** The stock after these lists were cut: rolls not opened, and what is left of those that were. */
export function stockAfter(stock: readonly StockRoll[], lists: readonly CutList[], leastM = 0.5): StockRoll[] {
  const opened = new Map<StockRoll, number>();
  const left: StockRoll[] = [];
  for (const { key, rolls } of lists) {
    for (const roll of rolls) {
      if (!roll.bought) opened.set(roll.from, (opened.get(roll.from) ?? 0) + 1);
      if (roll.leftM >= leastM)
        left.push({ measure: key, lengthM: roll.leftM, name: message('order.cutList.leftOver') });
    }
  }
  const whole = stock.filter((roll) => {
    const times = opened.get(roll) ?? 0;
    if (times > 0) opened.set(roll, times - 1);
    return times === 0;
  });
  return [...whole, ...left];
}
