import type { Project } from '../../model/project.ts';
import type { CatalogueItem, LabourRate, OrderSettings, Stage } from '../../model/things.ts';
import { type CutList, cutLists, rollsOnHand, type StockRoll, stockAfter } from '../cutting/cutLists.ts';
import type { Quantity, TakeOff } from '../types.ts';
import { cheapestFor, money, packsFor } from './packs.ts';
import { itemsFor, kitFor, type PriceList } from './priceList.ts';
import { quantitiesByStage } from './stages.ts';

/** One item that is ordered. */
export interface OrderLine {
  readonly item: CatalogueItem;
  /** In the item's unit, without waste. */
  readonly needed: number;
  readonly packs: number;
  /** The quantities that it serves. */
  readonly quantities: readonly Quantity[];
  readonly cost: Cost;
}

export interface LabourLine {
  readonly rate: LabourRate;
  readonly quantity: Quantity;
  readonly cost: Cost;
}

/** Money in the currency of the order; null where there is no price. */
export interface Cost {
  readonly net: number | null;
  readonly taxPercent: number;
  readonly tax: number | null;
}

export interface Sum {
  readonly net: number;
  readonly tax: number;
  readonly gross: number;
  /** Lines without a price, which are not in the sum. */
  readonly unpriced: number;
}

export interface OrderPart {
  /** Null: what is in no stage, or the whole job where there are none. */
  readonly stage: Stage | null;
  readonly quantities: readonly Quantity[];
  readonly lines: readonly OrderLine[];
  readonly labour: readonly LabourLine[];
  readonly cutLists: readonly CutList[];
  /** Quantities that nothing in the price list serves. */
  readonly unserved: readonly Quantity[];
  readonly materials: Sum;
  readonly work: Sum;
  readonly total: Sum;
}

export interface Order {
  readonly parts: readonly OrderPart[];
  readonly total: Sum;
}

export interface OrderInput {
  readonly project: Project;
  readonly takeOff: TakeOff;
  readonly prices: PriceList;
  readonly settings: OrderSettings;
}

/** What the parts before have left: rolls, and what is in opened packs. */
interface Carried {
  readonly stock: readonly StockRoll[];
  readonly needed: Map<string, number>;
}

/**
 * The order, stage by stage. What a stage leaves over (rolls, packs that were begun) is there for the next, so that
 * the stages together order no more than they must.
 */
export function orderOf({ project, takeOff, prices, settings }: OrderInput): Order {
  let carried: Carried = { stock: rollsOnHand(project), needed: new Map() };
  const parts: OrderPart[] = [];
  for (const { stage, quantities } of quantitiesByStage(project, takeOff.quantities)) {
    const lists = cutLists(quantities, prices, carried.stock, settings);
    const { lines, unserved } = linesFor(quantities, prices, settings, lists, carried.needed);
    const labour = labourLines(quantities, prices, settings);
    const materials = sumOf(lines.map(({ cost }) => cost));
    const work = sumOf(labour.map(({ cost }) => cost));
    parts.push({
      stage,
      quantities,
      lines,
      labour,
      cutLists: lists,
      unserved,
      materials,
      work,
      total: add(materials, work),
    });
    carried = { stock: stockAfter(carried.stock, lists), needed: carried.needed };
  }
  return { parts, total: parts.reduce((sum, { total }) => add(sum, total), nothing) };
}

interface Need {
  readonly item: CatalogueItem;
  amount: number;
  readonly quantities: Quantity[];
  /** Rolls that the cut list buys; null where packs are counted from the amount. */
  rolls: number | null;
}

function linesFor(
  quantities: readonly Quantity[],
  prices: PriceList,
  settings: OrderSettings,
  lists: readonly CutList[],
  neededBefore: Map<string, number>,
): Pick<OrderPart, 'lines' | 'unserved'> {
  const needs = new Map<string, Need>();
  const unserved: Quantity[] = [];
  const need = (item: CatalogueItem, amount: number, quantity: Quantity, rolls: number | null) => {
    const known = needs.get(item.id) ?? { item, amount: 0, quantities: [], rolls: null };
    known.amount += amount;
    if (!known.quantities.includes(quantity)) known.quantities.push(quantity);
    if (rolls !== null) known.rolls = (known.rolls ?? 0) + rolls;
    needs.set(item.id, known);
  };
  for (const quantity of quantities) {
    if (quantity.group === 'work') continue;
    const list = lists.find(({ key }) => key === quantity.key);
    const kit = kitFor(prices, quantity.key);
    const parts = (kit?.parts ?? []).flatMap(({ itemId, amount }) => {
      const item = prices.items.get(itemId);
      return item ? [{ item, amount }] : [];
    });
    if (list) {
      for (const [item, rolls] of boughtRolls(list)) need(item, rolls.cutM, quantity, rolls.count);
      if (list.tooLong.length + list.without.length > 0 && itemsFor(prices, quantity.key).length === 0)
        unserved.push(quantity);
    } else if (parts.length > 0) {
      for (const { item, amount } of parts) need(item, amount * quantity.amount, quantity, null);
    } else {
      const item = cheapestFor(itemsFor(prices, quantity.key), quantity.amount);
      if (item) need(item, quantity.amount, quantity, null);
      else unserved.push(quantity);
    }
  }
  const lines = [...needs.values()].map(({ item, amount, quantities: served, rolls }): OrderLine => {
    const before = neededBefore.get(item.id) ?? 0;
    if (rolls === null) neededBefore.set(item.id, before + amount);
    const packs = rolls ?? packsFor(item, before + amount) - packsFor(item, before);
    const net = item.price === null ? null : money(packs * item.price);
    return { item, needed: amount, packs, quantities: served, cost: costOf(net, item.taxPercent, settings) };
  });
  return { lines, unserved };
}

function boughtRolls({ rolls }: CutList): Map<CatalogueItem, { readonly count: number; readonly cutM: number }> {
  const items = new Map<CatalogueItem, { count: number; cutM: number }>();
  for (const roll of rolls) {
    if (!roll.bought) continue;
    const { from: item, cuts } = roll;
    const { count, cutM } = items.get(item) ?? { count: 0, cutM: 0 };
    items.set(item, { count: count + 1, cutM: cutM + cuts.reduce((sum, { lengthM }) => sum + lengthM, 0) });
  }
  return items;
}

function labourLines(quantities: readonly Quantity[], { labour }: PriceList, settings: OrderSettings): LabourLine[] {
  return quantities.flatMap((quantity) => {
    const rate = labour.find(({ per }) => quantity.key === `work:${per}`);
    if (!rate) return [];
    const net = rate.rate === null ? null : money(rate.rate * quantity.amount);
    return [{ rate, quantity, cost: costOf(net, rate.taxPercent, settings) }];
  });
}

function costOf(net: number | null, ownTaxPercent: number | null, { taxPercent }: OrderSettings): Cost {
  const percent = ownTaxPercent ?? taxPercent;
  return { net, taxPercent: percent, tax: net === null ? null : money((net * percent) / 100) };
}

const nothing: Sum = { net: 0, tax: 0, gross: 0, unpriced: 0 };

function sumOf(costs: readonly Cost[]): Sum {
  const priced = costs.flatMap(({ net, tax }) => (net === null ? [] : [{ net, tax: tax!, gross: 0, unpriced: 0 }]));
  return { ...priced.reduce(add, nothing), unpriced: costs.length - priced.length };
}

function add(a: Sum, b: Sum): Sum {
  const net = money(a.net + b.net);
  const tax = money(a.tax + b.tax);
  return { net, tax, gross: money(net + tax), unpriced: a.unpriced + b.unpriced };
}
