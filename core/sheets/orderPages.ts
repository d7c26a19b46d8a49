import { letters } from '../drawing/style.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { CutList } from '../quantities/cutting/cutLists.ts';
import {
  coilNote,
  cutListProof,
  cutListSentence,
  formatAmount,
  lineCaution,
  type OrderHabits,
  orderSentence,
  packText,
} from '../quantities/formatOrder.ts';
import type { Order, OrderLine, OrderPart } from '../quantities/order/order.ts';
import type { Piece, QuantityGroup, TakeOff } from '../quantities/types.ts';
import { formatMoney, formatTape } from '../words/numbers/write.ts';
import { type Block, space, words } from './flow/block.ts';
import { type Table, tableBlocks } from './flow/table.ts';
import { type TextPagesInput, textPages, textRoom } from './flow/textPages.ts';
import type { PageDraft } from './pageDraft.ts';

export interface OrderPagesInput extends TextPagesInput {
  readonly project: Project;
  readonly takeOff: TakeOff;
  readonly order: Order;
  readonly habits: OrderHabits;
}

/** The order to ring the supplier with, stage by stage: goods, work and what they come to. */
export function orderPages(input: OrderPagesInput): PageDraft[] {
  const { order, takeOff, habits } = input;
  const blocks = [
    paragraph(orderSentence(order, takeOff, habits), input, 'bold'),
    paragraph(footing(order), input),
    ...order.parts
      .filter(({ quantities }) => quantities.length > 0)
      .flatMap((part) => partBlocks(part, order.parts.length > 1, input)),
  ];
  return textPages('Order', trimmed(blocks), 'portrait', input);
}

/** The cut lists, a table for each roll, so that pieces can be cut and labelled in the shed. */
export function cutListPages(input: OrderPagesInput): PageDraft[] {
  const lists = input.order.parts.flatMap((part) =>
    part.cutLists.map((list) => ({ list, stage: input.order.parts.length > 1 ? stageName(part) : '' })),
  );
  if (lists.length === 0) return [];
  const blocks = lists.flatMap(({ list, stage }) => cutListBlocks(list, stage, input));
  const intro = paragraph(
    'Cut each piece to its length and label it. Pieces for the ground are never joined. Lengths are estimates: check the trench before you cut.',
    input,
  );
  return textPages('Cut lists', trimmed([intro, ...blocks]), 'portrait', input);
}

/** Every quantity with what makes it up. */
export function quantityPages(input: OrderPagesInput): PageDraft[] {
  const { quantities } = input.takeOff;
  if (quantities.length === 0) return [];
  const groups = Map.groupBy(quantities, ({ group }) => group);
  const blocks = [...groups].flatMap(([group, own]) => [
    heading(groupNames[group], input),
    ...tableBlocks(
      {
        columns: [{ title: 'Quantity' }, { title: 'Together', align: 'right' }, { title: 'Made up of' }],
        rows: own.map(({ name, amount, unit, pieces }) => [
          name,
          formatAmount(amount, unit, input.habits.units),
          madeUpOf(pieces, input.project)
            .map(([thing, sum]) => `${thing} ${formatAmount(sum, unit, input.habits.units)}`)
            .join('; '),
        ]),
      },
      widthOf(input),
      input.measure,
    ),
    space(4),
  ]);
  return textPages('Quantities', trimmed(blocks), 'portrait', input);
}

/** How much each thing takes, by its name; what no thing with a name takes, by its own words. */
function madeUpOf(pieces: readonly Piece[], project: Project): [name: string, sum: number][] {
  const sums = new Map<string, number>();
  for (const { thingIds, text, amount } of pieces) {
    const name = nameOfThing(project, thingIds[0]) ?? text;
    sums.set(name, (sums.get(name) ?? 0) + amount);
  }
  return [...sums];
}

function nameOfThing(project: Project, id: string | undefined): string | undefined {
  if (id === undefined) return undefined;
  const named = [project.fenceLine, project.gateway, project.switch, project.energiser, project.leadOut];
  return named.map((table) => table.get(id)?.name).find((name) => name !== undefined);
}

export const groupNames: Readonly<Record<QuantityGroup, string>> = {
  wire: 'Wire',
  posts: 'Posts',
  fittings: 'Fittings',
  gateways: 'Gateways',
  crossings: 'Crossings and cables',
  switches: 'Switches',
  supply: 'Energiser and earth',
  signs: 'Signs',
  work: 'Work',
};

function partBlocks(part: OrderPart, several: boolean, input: OrderPagesInput): Block[] {
  const { habits } = input;
  const title = several ? stageName(part) : 'Goods';
  const total: Table = {
    columns: [{ title: several ? `${stageName(part)} together` : 'Together' }, { title: 'Amount', align: 'right' }],
    rows: [
      ['Goods', formatMoney(part.materials.net, habits)],
      ['Work', formatMoney(part.work.net, habits)],
      ['Tax', formatMoney(part.total.tax, habits)],
    ],
    totals: ['To pay', formatMoney(part.total.gross, habits)],
  };
  return [
    heading(title, input),
    ...table(goodsTable(part, habits), input),
    space(3),
    ...(part.labour.length > 0 ? [heading('Work', input), ...table(workTable(part, habits), input), space(3)] : []),
    ...table(total, input),
    space(6),
  ];
}

function goodsTable({ lines }: OrderPart, habits: OrderHabits): Table {
  return {
    columns: [
      { title: 'Item', strong: true },
      { title: 'Needed', align: 'right' },
      { title: 'Pack', align: 'right' },
      { title: 'Packs', align: 'right' },
      { title: 'Price', align: 'right' },
      { title: 'Net', align: 'right' },
      { title: 'Tax %', align: 'right' },
    ],
    rows: lines.map((line) => goodsRow(line, habits)),
  };
}

function goodsRow(line: OrderLine, habits: OrderHabits): string[] {
  const { item, needed, packs, cost } = line;
  const caution = lineCaution(line);
  return [
    `${item.name}${item.invented ? '\u00a0*' : ''}${caution ? `\n${caution}` : ''}`,
    formatAmount(needed, item.unit, habits.units),
    packText(item, habits.units),
    String(packs),
    formatMoney(item.price, habits),
    formatMoney(cost.net, habits),
    String(cost.taxPercent),
  ];
}

function workTable({ labour }: OrderPart, habits: OrderHabits): Table {
  return {
    columns: [
      { title: 'Work', strong: true },
      { title: 'Amount', align: 'right' },
      { title: 'Rate', align: 'right' },
      { title: 'Net', align: 'right' },
    ],
    rows: labour.map(({ rate, quantity, cost }) => [
      rate.invented ? `${quantity.name} *` : quantity.name,
      formatAmount(quantity.amount, quantity.unit, habits.units),
      formatMoney(rate.rate, habits),
      formatMoney(cost.net, habits),
    ]),
  };
}

function cutListBlocks(list: CutList, stage: string, input: OrderPagesInput): Block[] {
  const { units } = propertyOf(input.project);
  const title = stage === '' ? list.name : `${list.name} (${stage})`;
  const missing = [
    ...list.tooLong.map((cut) => ({ cut, why: 'longer than every roll' })),
    ...list.without.map((cut) => ({ cut, why: 'no roll left' })),
  ];
  const rows = [
    ...list.rolls.flatMap((roll) =>
      roll.cuts.map((cut, i) => [
        i === 0 ? `${roll.name}, ${formatTape(roll.lengthM, units)}${roll.bought ? '' : `, ${roll.from.name}`}` : '',
        cut.label,
        formatTape(cut.lengthM, units),
        i === roll.cuts.length - 1 ? formatTape(roll.leftM, units) : '',
      ]),
    ),
    ...missing.map(({ cut, why }) => [`None: ${why}`, cut.label, formatTape(cut.lengthM, units), '']),
  ];
  return [
    heading(title, input),
    { ...paragraph(`${cutListSentence(list, units)} ${cutListProof(list)}`, input), keepWithNext: true },
    ...table(
      {
        columns: [
          { title: 'Roll' },
          { title: 'Label of the piece', strong: true },
          { title: 'Cut to', align: 'right' },
          { title: 'Left', align: 'right' },
        ],
        rows,
      },
      input,
    ),
    space(5),
  ];
}

function footing({ parts }: Order): string {
  const invented = parts.some(
    ({ lines, labour }) => lines.some(({ item }) => item.invented) || labour.some(({ rate }) => rate.invented),
  );
  const mark = invented ? ' Prices and rates marked * are invented, to show how the list works.' : '';
  return `Quantities are counted from the drawing and are estimates; packs and rolls are rounded up.${coilNote(parts.flatMap(({ lines }) => lines))}${mark}`;
}

function stageName({ stage }: OrderPart): string {
  return stage?.name ?? 'In no stage';
}

/** Without the space that ends the last part, which could begin a page of its own. */
function trimmed(blocks: readonly Block[]): readonly Block[] {
  return blocks.slice(0, -1);
}

function table(content: Table, input: OrderPagesInput): Block[] {
  return tableBlocks(content, widthOf(input), input.measure);
}

function heading(title: string, input: OrderPagesInput): Block {
  const style = { sizePt: letters.heading, font: 'bold', role: 'H2', afterMm: 1, keepWithNext: true } as const;
  return words(title, widthOf(input), style, input.measure);
}

function paragraph(content: string, input: OrderPagesInput, font: 'regular' | 'bold' = 'regular'): Block {
  return words(content, widthOf(input), { sizePt: letters.body, font, afterMm: 2.5 }, input.measure);
}

function widthOf({ property }: TextPagesInput): number {
  const [left, , right] = textRoom('portrait', property);
  return right - left;
}
