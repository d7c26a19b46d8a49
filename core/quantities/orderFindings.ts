import { plainWireFindings } from '../checks/drawing/plainWiresNotEntered.ts';
import type { Finding, Fix } from '../checks/finding.ts';
import { conductorLibrary } from '../electrical/conductors/conductorLibrary.ts';
import { isBuildingWire } from '../electrical/conductors/fenceCable.ts';
import { kgPerM } from '../electrical/conductors/wireMass.ts';
import { propertyOf } from '../model/project.ts';
import { fixed, formatTape, formatWholeLength, type Units } from '../words/numbers/write.ts';
import type { Cut, CutList } from './cutting/cutLists.ts';
import { addItemFor, changeItem } from './edits/changePrices.ts';
import { conductorOf, isLiveCable } from './measures.ts';
import type { Order, OrderInput, OrderPart } from './order/order.ts';
import { coilKg, startingPrices } from './order/startingPrices.ts';
import { counts } from './takeOff/input.ts';
import type { NotCounted, Quantity } from './types.ts';

/** What stands in the way of ringing the supplier with this order, worst first. */
export function orderFindings(input: OrderInput, order: Order): Finding[] {
  return [
    ...buildingWireFindings(order),
    ...order.parts.flatMap(({ cutLists }) =>
      cutLists.flatMap((list) => (isBuildingWireKey(list.key) ? [] : cutFindings(input, list))),
    ),
    ...input.takeOff.notCounted.map(notCountedFinding),
    ...plainWireFindings(input.project, countedTypes(input)),
    ...unserved(order.parts)
      .filter(({ key }) => !isBuildingWireKey(key))
      .map(unservedFinding),
    ...coilFindings(order, propertyOf(input.project).units),
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

function isBuildingWireKey(key: string): boolean {
  const conductorId = conductorOf(key);
  return conductorId !== null && isBuildingWire(conductorId);
}

/** Live cable that is a size of building wire: whether or not the price list has it, the order should not. */
function buildingWireFindings({ parts }: Order): Finding[] {
  const keys = new Map(parts.flatMap(({ quantities }) => quantities.map((quantity) => [quantity.key, quantity])));
  return [...keys.values()].flatMap((quantity) => {
    if (!isLiveCable(quantity.key) || !isBuildingWireKey(quantity.key)) return [];
    const ordered = parts.some(({ lines }) =>
      lines.some(({ quantities }) => quantities.some(({ key }) => key === quantity.key)),
    );
    return [
      finding('buildingWireOrdered', [quantity.key], {
        severity: 'warning',
        message: `${quantity.name}: ${ordered ? 'it is in this order as the live cable' : 'it is drawn as the live cable; the price list does not offer it, so it is not in the order'}.`,
        remedy: 'Choose fence lead-out cable rated 10 kV or more in Draw, and the order counts that.',
        thingIds: thingsOf(quantity),
      }),
    ];
  });
}

/** A coil of more than this nobody lifts; common practice, no source. */
const heaviestCoilKg = 50;
/** What the price list of older versions took every coil to hold. */
const oldCoilM = 650;

/** Coils in the order whose length does not go with their gauge. The user's price list stays as it is until told otherwise. */
function coilFindings({ parts }: Order, units: Units): Finding[] {
  const items = new Map(parts.flatMap(({ lines }) => lines.map(({ item }) => [item.id, item])));
  return [...items.values()].flatMap((item) => {
    const conductor = conductorLibrary.find(({ id }) => item.measure === `wire:${id}`);
    if (item.unit !== 'm' || conductor?.kind !== 'wire' || !conductor.core) return [];
    const { material, diameterMm } = conductor.core;
    const massKg = item.packSize * kgPerM(material, diameterMm);
    const starting = startingPrices.items.find(({ measure }) => measure === item.measure)!;
    const usualM = starting.packSize;
    const isOld = item.packSize === oldCoilM && item.name === `${conductor.name}, coil of ${oldCoilM} m`;
    if (massKg <= heaviestCoilKg && !(isOld && Math.abs(usualM / oldCoilM - 1) > 0.05)) return [];
    const to = isOld ? { packSize: usualM, name: starting.name, note: starting.note } : { packSize: usualM };
    return [
      finding('coilLength', [item.id], {
        severity: 'notKnown',
        message: `${item.name}: ${formatWholeLength(item.packSize, units)} of this wire weigh about ${fixed(massKg, 0)} kg; a coil of ${coilKg[material]} kg holds about ${formatWholeLength(usualM, units)}.`,
        remedy: 'Read the length on the label and enter it in the price list: the number of coils follows from it.',
        fixes: [
          {
            label: `Take coils of ${coilKg[material]} kg, about ${formatWholeLength(usualM, units)}`,
            edit: changeItem(item.id, to),
          },
        ],
      }),
    ];
  });
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

/** The fence types of all lines that are counted. */
function countedTypes({ project, settings }: OrderInput): Set<string> {
  const lines = [...project.fenceLine.values()];
  return new Set(lines.filter((line) => counts({ settings }, line.status)).map(({ typeId }) => typeId));
}

function notCountedFinding({ code, thingId, text }: NotCounted): Finding {
  return finding(code, [thingId], {
    severity: 'notKnown',
    message: text,
    remedy: 'Fix it in Draw, and the order counts it.',
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
    thingIds: thingsOf(quantity),
    fixes: [add],
  });
}

function thingsOf({ pieces }: Quantity): string[] {
  return [...new Set(pieces.flatMap(({ thingIds }) => thingIds))];
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
