import type { CutList } from '../../quantities/cutting/cutLists.ts';
import { lineCaution } from '../../quantities/formatOrder.ts';
import type { Order, OrderLine } from '../../quantities/order/order.ts';
import type { TakeOff } from '../../quantities/types.ts';
import type { Figures } from '../../words/types.ts';
import { type Cell, writeCsv } from './writeCsv.ts';

/** What is ordered and what the work costs, a row each. */
export function writeOrder({ parts }: Order, currency: string | null, f: Figures): string {
  const words = f.words.exchange.orderTables;
  const columns = [
    words.stage,
    words.sort,
    words.item,
    words.needed,
    words.unit,
    words.packs,
    words.packSize,
    words.price({ currency }),
    words.net({ currency }),
    words.taxPercent,
    words.tax({ currency }),
    words.for,
    words.caution,
  ];
  const rows = parts.flatMap(({ stage, lines, labour }) => [
    ...lines.map(({ item, needed, packs, cost, quantities }): Cell[] => [
      stage?.name ?? '',
      words.goods,
      item.name,
      round(needed),
      item.unit,
      packs,
      item.packSize,
      item.price,
      cost.net,
      cost.taxPercent,
      cost.tax,
      quantities.map(({ name }) => f.say(name)).join('; '),
      cautionOf({ quantities }, f),
    ]),
    ...labour.map(({ rate, quantity, cost }): Cell[] => [
      stage?.name ?? '',
      words.labour,
      f.say(quantity.name),
      round(quantity.amount),
      quantity.unit,
      null,
      null,
      rate.rate,
      cost.net,
      cost.taxPercent,
      cost.tax,
      '',
      '',
    ]),
  ]);
  return writeCsv(columns, rows);
}

/** Every quantity with the pieces that make it up. */
export function writeQuantities({ quantities }: TakeOff, f: Figures): string {
  const words = f.words.exchange.orderTables;
  const rows = quantities.flatMap(({ name, unit, amount, pieces }) =>
    pieces.map((piece): Cell[] => [f.say(name), round(amount), unit, f.say(piece.text), round(piece.amount)]),
  );
  return writeCsv([words.quantity, words.together, words.unit, words.piece, words.amount], rows);
}

/** Which piece is cut from which roll. */
export function writeCutLists(lists: readonly CutList[], f: Figures): string {
  const words = f.words.exchange.orderTables;
  const rows = lists.flatMap(({ name, rolls, tooLong, without }) => [
    ...rolls.flatMap((roll) =>
      roll.cuts.map((cut): Cell[] => [
        f.say(name),
        f.words.order.cutList.roll({ number: roll.number }),
        roll.bought ? words.bought : f.say(roll.from.name),
        roll.lengthM,
        f.say(cut.label),
        cut.lengthM,
      ]),
    ),
    ...[...tooLong, ...without].map((cut): Cell[] => [
      f.say(name),
      words.noRoll,
      '',
      null,
      f.say(cut.label),
      cut.lengthM,
    ]),
  ]);
  return writeCsv([words.of, words.roll, words.from, words.rollLengthM, words.label, words.cutToM], rows);
}

function cautionOf(line: Pick<OrderLine, 'quantities'>, f: Figures): string {
  const caution = lineCaution(line);
  return caution ? f.say(caution) : '';
}

/** To the millimetre or the thousandth. */
function round(amount: number): number {
  return Math.round(amount * 1000) / 1000;
}
