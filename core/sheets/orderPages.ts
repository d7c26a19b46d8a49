import { letters } from '../drawing/style.ts';
import type { Project } from '../model/project.ts';
import type { CutList, CutRoll } from '../quantities/cutting/cutLists.ts';
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
import type { Piece, TakeOff } from '../quantities/types.ts';
import type { Texts } from '../words/message.ts';
import { formatMoney } from '../words/numbers/write.ts';
import type { Figures } from '../words/types.ts';
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
    paragraph(orderSentence(order, takeOff, habits, input.f), input, 'bold'),
    paragraph(footing(order, input), input),
    ...order.parts
      .filter(({ quantities }) => quantities.length > 0)
      .flatMap((part) => partBlocks(part, order.parts.length > 1, input)),
  ];
  return textPages(saidOf(input).title, trimmed(blocks), 'portrait', input);
}

/** The cut lists, a table for each roll, so that pieces can be cut and labelled in the shed. */
export function cutListPages(input: OrderPagesInput): PageDraft[] {
  const lists = input.order.parts.flatMap((part) =>
    part.cutLists.map((list) => ({ list, stage: input.order.parts.length > 1 ? stageName(part, saidOf(input)) : '' })),
  );
  if (lists.length === 0) return [];
  const blocks = lists.flatMap(({ list, stage }) => cutListBlocks(list, stage, input));
  const said = saidOf(input);
  const intro = paragraph(said.cutIntro, input);
  return textPages(said.cutLists, trimmed([intro, ...blocks]), 'portrait', input);
}

/** Every quantity with what makes it up. */
export function quantityPages(input: OrderPagesInput): PageDraft[] {
  const { quantities } = input.takeOff;
  if (quantities.length === 0) return [];
  const groups = Map.groupBy(quantities, ({ group }) => group);
  const said = saidOf(input);
  const { together } = input.f.words.sheets.heads;
  const blocks = [...groups].flatMap(([group, own]) => [
    heading(said.groups[group], input),
    ...tableBlocks(
      {
        columns: [{ title: said.quantity }, { title: together, align: 'right' }, { title: said.madeUpOf }],
        rows: own.map(({ name, amount, unit, pieces }) => [
          input.f.say(name),
          formatAmount(amount, unit, input.habits.units),
          madeUpOf(pieces, input)
            .map(([thing, sum]) => said.piece({ thing, amount: formatAmount(sum, unit, input.habits.units) }))
            .join('; '),
        ]),
      },
      widthOf(input),
      input.measure,
    ),
    space(4),
  ]);
  return textPages(said.quantities, trimmed(blocks), 'portrait', input);
}

/** How much each thing takes, by its name; what no thing with a name takes, by its own words. */
function madeUpOf(pieces: readonly Piece[], { project, f }: OrderPagesInput): [name: string, sum: number][] {
  const sums = new Map<string, number>();
  for (const { thingIds, text, amount } of pieces) {
    const name = nameOfThing(project, thingIds[0]) ?? f.say(text);
    sums.set(name, (sums.get(name) ?? 0) + amount);
  }
  return [...sums];
}

function nameOfThing(project: Project, id: string | undefined): string | undefined {
  if (id === undefined) return undefined;
  const named = [project.fenceLine, project.gateway, project.switch, project.energiser, project.leadOut];
  return named.map((table) => table.get(id)?.name).find((name) => name !== undefined);
}

function saidOf({ f }: TextPagesInput): Texts['sheets']['order'] {
  return f.words.sheets.order;
}

function partBlocks(part: OrderPart, several: boolean, input: OrderPagesInput): Block[] {
  const { habits } = input;
  const said = saidOf(input);
  const { together } = input.f.words.sheets.heads;
  const title = several ? stageName(part, said) : said.goods;
  const total: Table = {
    columns: [
      { title: several ? said.stageTogether({ stage: stageName(part, said) }) : together },
      { title: said.amount, align: 'right' },
    ],
    rows: [
      [said.goods, formatMoney(part.materials.net, habits)],
      [said.work, formatMoney(part.work.net, habits)],
      [said.tax, formatMoney(part.total.tax, habits)],
    ],
    totals: [said.toPay, formatMoney(part.total.gross, habits)],
  };
  return [
    heading(title, input),
    ...table(goodsTable(part, input), input),
    space(3),
    ...(part.labour.length > 0 ? [heading(said.work, input), ...table(workTable(part, input), input), space(3)] : []),
    ...table(total, input),
    space(6),
  ];
}

function goodsTable({ lines }: OrderPart, input: OrderPagesInput): Table {
  const said = saidOf(input);
  return {
    columns: [
      { title: said.item, strong: true },
      { title: said.needed, align: 'right' },
      { title: said.pack, align: 'right' },
      { title: said.packs, align: 'right' },
      { title: said.price, align: 'right' },
      { title: said.net, align: 'right' },
      { title: said.taxPercent, align: 'right' },
    ],
    rows: lines.map((line) => goodsRow(line, input)),
  };
}

function goodsRow(line: OrderLine, { habits, f }: OrderPagesInput): string[] {
  const { item, needed, packs, cost } = line;
  const caution = lineCaution(line);
  return [
    `${item.name}${item.invented ? '\u00a0*' : ''}${caution ? `\n${f.say(caution)}` : ''}`,
    formatAmount(needed, item.unit, habits.units),
    packText(item, f),
    String(packs),
    formatMoney(item.price, habits),
    formatMoney(cost.net, habits),
    String(cost.taxPercent),
  ];
}

function workTable({ labour }: OrderPart, input: OrderPagesInput): Table {
  const { habits } = input;
  const said = saidOf(input);
  return {
    columns: [
      { title: said.work, strong: true },
      { title: said.amount, align: 'right' },
      { title: said.rate, align: 'right' },
      { title: said.net, align: 'right' },
    ],
    rows: labour.map(({ rate, quantity, cost }) => [
      rate.invented ? said.inventedRate({ name: input.f.say(quantity.name) }) : input.f.say(quantity.name),
      formatAmount(quantity.amount, quantity.unit, habits.units),
      formatMoney(rate.rate, habits),
      formatMoney(cost.net, habits),
    ]),
  };
}

function cutListBlocks(list: CutList, stage: string, input: OrderPagesInput): Block[] {
  const { f } = input;
  const said = saidOf(input);
  const name = f.say(list.name);
  const title = stage === '' ? name : said.listOfStage({ list: name, stage });
  const missing = [
    ...list.tooLong.map((cut) => ({ cut, why: said.tooLong })),
    ...list.without.map((cut) => ({ cut, why: said.noRollLeft })),
  ];
  const rows = [
    ...list.rolls.flatMap((roll) =>
      roll.cuts.map((cut, i) => [
        i === 0 ? rollText(roll, f) : '',
        f.say(cut.label),
        f.tape(cut.lengthM),
        i === roll.cuts.length - 1 ? f.tape(roll.leftM) : '',
      ]),
    ),
    ...missing.map(({ cut, why }) => [why, f.say(cut.label), f.tape(cut.lengthM), '']),
  ];
  return [
    heading(title, input),
    { ...paragraph(`${cutListSentence(list, f)} ${f.say(cutListProof(list))}`, input), keepWithNext: true },
    ...table(
      {
        columns: [
          { title: said.roll },
          { title: said.label, strong: true },
          { title: said.cutTo, align: 'right' },
          { title: said.left, align: 'right' },
        ],
        rows,
      },
      input,
    ),
    space(5),
  ];
}

/** Which roll, and where it is from unless it is bought. */
function rollText({ number, lengthM, ...roll }: CutRoll, f: Figures): string {
  const { rollOfLength, rollFrom } = f.words.sheets.order;
  const said = { roll: f.words.order.cutList.roll({ number }), length: f.tape(lengthM) };
  return roll.bought ? rollOfLength(said) : rollFrom({ ...said, from: f.say(roll.from.name) });
}

function footing({ parts }: Order, input: OrderPagesInput): string {
  const said = saidOf(input);
  const invented = parts.some(
    ({ lines, labour }) => lines.some(({ item }) => item.invented) || labour.some(({ rate }) => rate.invented),
  );
  const note = coilNote(parts.flatMap(({ lines }) => lines));
  const all = [said.counted, note ? input.f.say(note) : '', invented ? said.invented : ''].filter(
    (each) => each !== '',
  );
  return input.f.words.things.sentences({ all });
}

function stageName({ stage }: OrderPart, said: Texts['sheets']['order']): string {
  return stage?.name ?? said.noStage;
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
