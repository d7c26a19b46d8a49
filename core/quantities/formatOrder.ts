import type { CatalogueItem } from '../model/things.ts';
import { plainWords } from '../words/figures.ts';
import { farUnit, lengthUnit, mPerKm } from '../words/numbers/units.ts';
import { fixed, formatLength, formatMoney, type Units } from '../words/numbers/write.ts';
import { counted } from '../words/text.ts';
import type { CutList } from './cutting/cutLists.ts';
import { isLiveCable } from './measures.ts';
import type { Order, OrderLine } from './order/order.ts';
import type { QuantityUnit, TakeOff } from './types.ts';

/** How the order's figures are written. */
export interface OrderHabits {
  readonly units: Units;
  /** ISO 4217, or null where it is not said: then bare figures. */
  readonly currency: string | null;
}

/** A quantity with its unit: "35", "812.4 m", "0.40 km", "2,665 ft", "0.25 mi". */
export function formatAmount(amount: number, unit: QuantityUnit, units: Units): string {
  if (unit === 'each') return fixed(amount, Number.isInteger(amount) ? 0 : 1);
  if (unit === 'km') return `${fixed((amount * mPerKm) / farUnit(units).lengthM, 2)} ${farUnit(units).name}`;
  const { name, lengthM } = lengthUnit(units);
  return `${fixed(amount / lengthM, name === 'm' && amount < 100 ? 1 : 0)} ${name}`;
}

/** "bag of 100", "200 m", "each". */
export function packText({ unit, packSize }: CatalogueItem, units: Units): string {
  if (unit === 'm') return formatAmount(packSize, 'm', units);
  return packSize === 1 ? 'each' : `pack of ${fixed(packSize, Number.isInteger(packSize) ? 0 : 1)}`;
}

/** What must be said beside a line of the order; null for most. */
export function lineCaution({ quantities }: Pick<OrderLine, 'quantities'>): string | null {
  return quantities.some(({ key }) => isLiveCable(key)) ? plainWords().power.conductors.orderNote : null;
}

/** What must be said of coils of fence wire, whose lengths are worked out; empty where the order has none. */
export function coilNote(lines: readonly Pick<OrderLine, 'quantities'>[]): string {
  const some = lines.some(({ quantities }) => quantities.some(({ key }) => key.startsWith('wire:')));
  return some ? ' Lengths of coils are worked out from mass and gauge: what the label says goes before them.' : '';
}

/** The answer of Order in one sentence. */
export function orderSentence({ parts, total }: Order, { quantities }: TakeOff, habits: OrderHabits): string {
  if (quantities.length === 0) return 'Nothing is planned that would have to be ordered.';
  const items = new Set(parts.flatMap(({ lines }) => lines.map(({ item }) => item.id))).size;
  const stages = parts.filter(({ stage }) => stage !== null).length;
  const goods = formatMoney(sum(parts.map(({ materials }) => materials.net)), habits);
  const work = formatMoney(sum(parts.map((part) => part.work.net)), habits);
  const tax = total.tax > 0 ? ` and ${formatMoney(total.tax, habits)} of tax` : '';
  const open = total.unpriced > 0 ? `; ${total.unpriced} without a price are not in it` : '';
  const fence = quantities.find(({ key }) => key === 'work:fenceKm');
  const of = fence ? ` for ${formatLength(fence.amount * 1000, habits.units)} of fence` : '';
  const staged = stages > 0 ? ` in ${counted(stages, 'stage')}` : '';
  const bought = counted(items, 'item');
  return `${formatMoney(total.gross, habits)}${of}${staged}: ${bought} for ${goods}, work for ${work}${tax}${open}.`;
}

function sum(amounts: readonly number[]): number {
  return amounts.reduce((total, amount) => total + amount, 0);
}

/** "12 pieces, 96.4 m, from 1 roll; 3.5 m left over." */
export function cutListSentence({ rolls, cutM, leftM }: CutList, units: Units): string {
  const pieces = rolls.reduce((sum, { cuts }) => sum + cuts.length, 0);
  const from = counted(rolls.length, 'roll');
  return `${counted(pieces, 'piece')}, ${formatAmount(cutM, 'm', units)}, from ${from}; ${formatAmount(leftM, 'm', units)} left over.`;
}

/** Whether the cut list is the best there is, in words. */
export function cutListProof({ optimal, least, rolls, without, tooLong }: CutList): string {
  if (without.length > 0) return 'Not all pieces have a roll.';
  if (optimal) return `Proven: no way to cut ${tooLong.length > 0 ? 'the others ' : ''}buys, opens or wastes less.`;
  if (least && rolls.length > least.rolls)
    return `Not proven best: no way to cut opens fewer than ${least.rolls} rolls.`;
  return 'No way to cut opens fewer rolls; that none wastes less is not proven.';
}
