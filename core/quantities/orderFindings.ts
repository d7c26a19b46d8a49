import type { Finding, Fix } from '../checks/finding.ts';
import { formatTape } from '../model/formatUnits.ts';
import { propertyOf } from '../model/project.ts';
import type { Cut, CutList } from './cutting/cutLists.ts';
import { addItemFor } from './edits/changePrices.ts';
import type { Order, OrderInput, OrderPart } from './order/order.ts';
import type { NotCounted, Quantity } from './types.ts';

/** What stands in the way of ringing the supplier with this order, worst first. */
export function orderFindings(input: OrderInput, order: Order): Finding[] {
  return [
    ...order.parts.flatMap(({ cutLists }) => cutLists.flatMap((list) => cutFindings(input, list))),
    ...input.takeOff.notCounted.map(notCountedFinding),
    ...unserved(order.parts).map(unservedFinding),
    ...unpriced(order.parts),
    ...invented(order),
    ...currency(input, order),
  ];
}

function finding(
  rule: string,
  about: readonly string[],
  parts: Omit<Finding, 'id' | 'rule' | 'source' | 'at' | 'fixes' | 'thingIds'> & Partial<Finding>,
): Finding {
  return { id: [rule, ...about].join(' '), rule, source: null, at: null, fixes: [], thingIds: [], ...parts };
}

function cutFindings(
  { project }: OrderInput,
  { key, name, tooLong, without, rolls, optimal, least }: CutList,
): Finding[] {
  const { units } = propertyOf(project);
  const said = (cuts: readonly Cut[]) =>
    cuts.map(({ label, lengthM }) => `${label} (${formatTape(lengthM, units)})`).join(', ');
  const found: Finding[] = [];
  if (tooLong.length > 0) {
    found.push(
      finding('cutTooLong', [key, ...tooLong.map(({ label }) => label)], {
        severity: 'error',
        message: `${name}: longer than every roll that is on hand or for sale: ${said(tooLong)}. It would need a joint underground.`,
        remedy: 'Add a longer roll to the price list or to the rolls on hand.',
        thingIds: tooLong.flatMap(({ thingIds }) => thingIds),
      }),
    );
  }
  if (without.length > 0) {
    found.push(
      finding('cutWithoutRoll', [key, ...without.map(({ label }) => label)], {
        severity: 'error',
        message: `${name}: the rolls on hand are too few, and none is for sale: ${said(without)}.`,
        remedy: 'Put a roll of it into the price list.',
        thingIds: without.flatMap(({ thingIds }) => thingIds),
      }),
    );
  }
  if (!optimal && without.length === 0 && least !== null && rolls.length > least.rolls) {
    found.push(
      finding('cutNotProven', [key], {
        severity: 'hint',
        message: `${name}: cut from ${rolls.length} rolls; it is not proven that ${least.rolls} would not do.`,
        remedy: 'The list can be used as it stands.',
      }),
    );
  }
  return found;
}

function notCountedFinding({ code, thingId, text }: NotCounted): Finding {
  return finding(code, [thingId], {
    severity: 'notKnown',
    message: text,
    remedy: 'Mend it in Draw, and the order counts it.',
    thingIds: [thingId],
  });
}

function unserved(parts: readonly OrderPart[]): Quantity[] {
  const byKey = new Map(parts.flatMap((part) => part.unserved.map((quantity) => [quantity.key, quantity])));
  return [...byKey.values()];
}

function unservedFinding(quantity: Quantity): Finding {
  const add: Fix = { label: 'Add an item for it', edit: addItemFor(quantity) };
  return finding('noItem', [quantity.key], {
    severity: 'warning',
    message: `${quantity.name}: nothing in the price list serves it, so it is not in the order.`,
    remedy: 'Add an item or a kit for it to the price list.',
    thingIds: [...new Set(quantity.pieces.flatMap(({ thingIds }) => thingIds))],
    fixes: [add],
  });
}

function unpriced(parts: readonly OrderPart[]): Finding[] {
  const names = new Set(
    parts.flatMap(({ lines }) => lines.filter(({ cost }) => cost.net === null).map(({ item }) => item.name)),
  );
  const work = new Set(
    parts.flatMap(({ labour }) => labour.filter(({ cost }) => cost.net === null).map(({ quantity }) => quantity.name)),
  );
  const all = [...names, ...work];
  if (all.length === 0) return [];
  const shown = all.length > 4 ? `${all.slice(0, 4).join('; ')} and ${all.length - 4} more` : all.join('; ');
  return [
    finding('noPrice', [], {
      severity: 'warning',
      message: `Without a price, and not in the total: ${shown}.`,
      remedy: 'Enter the prices in the price list.',
    }),
  ];
}

function invented({ parts }: Order): Finding[] {
  const items = new Set(
    parts.flatMap(({ lines }) => lines.filter(({ item }) => item.invented).map(({ item }) => item.id)),
  );
  const rates = new Set(
    parts.flatMap(({ labour }) => labour.filter(({ rate }) => rate.invented).map(({ rate }) => rate.id)),
  );
  if (items.size + rates.size === 0) return [];
  return [
    finding('inventedPrices', [], {
      severity: 'notKnown',
      message: `${items.size} prices and ${rates.size} labour rates in this order are invented, to show how it works.`,
      remedy: "Enter your supplier's prices, or bring them in as CSV.",
    }),
  ];
}

function currency({ settings }: OrderInput, { parts }: Order): Finding[] {
  if (settings.currency !== null || parts.every(({ lines }) => lines.length === 0)) return [];
  return [
    finding('noCurrency', [], {
      severity: 'notKnown',
      message: 'It is not said which currency the prices are in.',
      remedy: 'Enter it under Terms.',
    }),
  ];
}
