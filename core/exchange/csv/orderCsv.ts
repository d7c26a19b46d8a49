import type { CutList } from '../../quantities/cutting/cutLists.ts';
import { lineCaution } from '../../quantities/formatOrder.ts';
import type { Order } from '../../quantities/order/order.ts';
import type { TakeOff } from '../../quantities/types.ts';
import { plainWords } from '../../words/figures.ts';
import { type Cell, writeCsv } from './writeCsv.ts';

/** What is ordered and what the work costs, a row each. */
export function writeOrder({ parts }: Order, currency: string | null): string {
  const words = plainWords().exchange.orderTables;
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
      quantities.map(({ name }) => name).join('; '),
      lineCaution({ quantities }) ?? '',
    ]),
    ...labour.map(({ rate, quantity, cost }): Cell[] => [
      stage?.name ?? '',
      words.labour,
      quantity.name,
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
export function writeQuantities({ quantities }: TakeOff): string {
  const words = plainWords().exchange.orderTables;
  const rows = quantities.flatMap(({ name, unit, amount, pieces }) =>
    pieces.map((piece): Cell[] => [name, round(amount), unit, piece.text, round(piece.amount)]),
  );
  return writeCsv([words.quantity, words.together, words.unit, words.piece, words.amount], rows);
}

/** Which piece is cut from which roll. */
export function writeCutLists(lists: readonly CutList[]): string {
  const words = plainWords().exchange.orderTables;
  const rows = lists.flatMap(({ name, rolls, tooLong, without }) => [
    ...rolls.flatMap((roll) =>
      roll.cuts.map((cut): Cell[] => [
        name,
        roll.name,
        roll.bought ? words.bought : roll.from.name,
        roll.lengthM,
        cut.label,
        cut.lengthM,
      ]),
    ),
    ...[...tooLong, ...without].map((cut): Cell[] => [name, words.noRoll, '', null, cut.label, cut.lengthM]),
  ]);
  return writeCsv([words.of, words.roll, words.from, words.rollLengthM, words.label, words.cutToM], rows);
}

/** To the millimetre or the thousandth. */
function round(amount: number): number {
  return Math.round(amount * 1000) / 1000;
}
