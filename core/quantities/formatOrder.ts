import type { CatalogueItem } from '../model/things.ts';
import { type Message, message } from '../words/message.ts';
import { farUnit, lengthUnit, mPerKm } from '../words/numbers/units.ts';
import { fixed, formatMoney, type Units } from '../words/numbers/write.ts';
import type { Figures } from '../words/types.ts';
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

/** "pack of 100", "200 m", "each". */
export function packText({ unit, packSize }: CatalogueItem, f: Figures): string {
  if (unit === 'm') return formatAmount(packSize, 'm', f.units);
  return packSize === 1 ? f.words.order.pack.each : f.words.order.pack.of({ size: packSize });
}

/** What must be said beside a line of the order; null for most. */
export function lineCaution({ quantities }: Pick<OrderLine, 'quantities'>): Message | null {
  return quantities.some(({ key }) => isLiveCable(key)) ? message('power.conductors.orderNote') : null;
}

/** What must be said of coils of fence wire, whose lengths are worked out; null where the order has none. */
export function coilNote(lines: readonly Pick<OrderLine, 'quantities'>[]): Message | null {
  const some = lines.some(({ quantities }) => quantities.some(({ key }) => key.startsWith('wire:')));
  return some ? message('order.wireNote') : null;
}

/** The answer of Order in one sentence. */
export function orderSentence(
  { parts, total }: Order,
  { quantities }: TakeOff,
  habits: OrderHabits,
  f: Figures,
): string {
  const { sentence } = f.words.order;
  if (quantities.length === 0) return sentence.nothing;
  const fence = quantities.find(({ key }) => key === 'work:fenceKm');
  return sentence.whole({
    gross: formatMoney(total.gross, habits),
    goods: formatMoney(sum(parts.map(({ materials }) => materials.net)), habits),
    work: formatMoney(sum(parts.map((part) => part.work.net)), habits),
    tax: total.tax > 0 ? formatMoney(total.tax, habits) : null,
    fenceM: fence ? fence.amount * mPerKm : null,
    stages: parts.filter(({ stage }) => stage !== null).length,
    items: new Set(parts.flatMap(({ lines }) => lines.map(({ item }) => item.id))).size,
    unpriced: total.unpriced,
  });
}

function sum(amounts: readonly number[]): number {
  return amounts.reduce((total, amount) => total + amount, 0);
}

/** "12 pieces, 96.4 m, from 1 roll; 3.5 m left over." */
export function cutListSentence({ rolls, cutM, leftM }: CutList, f: Figures): string {
  return f.words.order.cutList.sum({
    pieces: rolls.reduce((count, { cuts }) => count + cuts.length, 0),
    cut: formatAmount(cutM, 'm', f.units),
    rolls: rolls.length,
    left: formatAmount(leftM, 'm', f.units),
  });
}

/** Whether the cut list is the best there is. */
export function cutListProof({ optimal, least, rolls, without, tooLong }: CutList): Message {
  if (without.length > 0) return message('order.cutList.withoutRoll');
  if (optimal) return message(`order.cutList.${tooLong.length > 0 ? 'provenOthers' : 'proven'}`);
  if (least && rolls.length > least.rolls) return message('order.cutList.notProvenFewest', { least: least.rolls });
  return message('order.cutList.notProvenLeast');
}
