import { plainWireFindings } from '../checks/drawing/plainWiresNotEntered.ts';
import type { Finding, Fix } from '../checks/finding.ts';
import { conductorLibrary } from '../electrical/conductors/conductorLibrary.ts';
import { isBuildingWire } from '../electrical/conductors/fenceCable.ts';
import { kgPerM } from '../electrical/conductors/wireMass.ts';
import { message } from '../words/message.ts';
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
      cutLists.flatMap((list) => (isBuildingWireKey(list.key) ? [] : cutFindings(list))),
    ),
    ...input.takeOff.notCounted.map(notCountedFinding),
    ...plainWireFindings(input.project, countedTypes(input)).map((found) => ({
      ...found,
      workspaces: ['order' as const],
    })),
    ...unserved(order.parts)
      .filter(({ key }) => !isBuildingWireKey(key))
      .map(unservedFinding),
    ...coilFindings(order),
    ...unpriced(order.parts),
    ...invented(order),
    ...currency(input, order),
  ];
}

function finding(
  rule: string,
  about: readonly string[],
  parts: Pick<Finding, 'severity' | 'message' | 'remedy'> & Partial<Finding>,
): Finding {
  return {
    id: [rule, ...about].join(' '),
    rule,
    workspaces: ['order'],
    source: null,
    at: null,
    fixes: [],
    thingIds: [],
    ...parts,
  };
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
        message: message(ordered ? 'order.buildingWire.ordered' : 'order.buildingWire.notOffered', {
          name: quantity.name,
        }),
        remedy: message('order.buildingWire.remedy'),
        thingIds: thingsOf(quantity),
      }),
    ];
  });
}

/** A coil of more than this nobody lifts; common practice, no source. */
const heaviestCoilKg = 50;
/** What the price list of older versions took every coil to hold, and how it named one. */
const oldCoilM = 650;
const oldCoilName = /^(?:Steel|Aluminium) wire \d\.\d mm, coil of 650 m$/;

/** Coils in the order whose length does not go with their gauge. The user's price list stays as it is until told otherwise. */
function coilFindings({ parts }: Order): Finding[] {
  const items = new Map(parts.flatMap(({ lines }) => lines.map(({ item }) => [item.id, item])));
  return [...items.values()].flatMap((item) => {
    const conductor = conductorLibrary.find(({ id }) => item.measure === `wire:${id}`);
    if (item.unit !== 'm' || conductor?.kind !== 'wire' || !conductor.core) return [];
    const { material, diameterMm } = conductor.core;
    const massKg = item.packSize * kgPerM(material, diameterMm);
    const starting = startingPrices().items.find(({ measure }) => measure === item.measure)!;
    const usualM = starting.packSize;
    const isOld = item.packSize === oldCoilM && oldCoilName.test(item.name);
    if (massKg <= heaviestCoilKg && !(isOld && Math.abs(usualM / oldCoilM - 1) > 0.05)) return [];
    const to = isOld ? { packSize: usualM, name: starting.name, note: starting.note } : { packSize: usualM };
    return [
      finding('coilLength', [item.id], {
        severity: 'notKnown',
        message: message('order.coilLength.message', {
          name: item.name,
          packM: item.packSize,
          massKg,
          coilKg: coilKg[material],
          usualM,
        }),
        remedy: message('order.coilLength.remedy'),
        fixes: [
          {
            label: message('order.coilLength.fix', { coilKg: coilKg[material], usualM }),
            edit: changeItem(item.id, to),
          },
        ],
      }),
    ];
  });
}

/** Tells a cut from the others of its list, in whatever language. */
function cutId({ thingIds }: Cut): string {
  return thingIds.join('+');
}

function cutFindings({ key, name, tooLong, without, rolls, optimal, least }: CutList): Finding[] {
  const values = (cuts: readonly Cut[]) => ({ name, cuts: cuts.map(({ label, lengthM }) => ({ label, lengthM })) });
  const found: Finding[] = [];
  if (tooLong.length > 0) {
    found.push(
      finding('cutTooLong', [key, ...tooLong.map(cutId)], {
        severity: 'error',
        message: message('order.cuts.tooLong', values(tooLong)),
        remedy: message('order.cuts.tooLongRemedy'),
        thingIds: tooLong.flatMap(({ thingIds }) => thingIds),
      }),
    );
  }
  if (without.length > 0) {
    found.push(
      finding('cutWithoutRoll', [key, ...without.map(cutId)], {
        severity: 'error',
        message: message('order.cuts.withoutRoll', values(without)),
        remedy: message('order.cuts.withoutRollRemedy'),
        thingIds: without.flatMap(({ thingIds }) => thingIds),
      }),
    );
  }
  if (!optimal && without.length === 0 && least !== null && rolls.length > least.rolls) {
    found.push(
      finding('cutNotProven', [key], {
        severity: 'hint',
        message: message('order.cuts.notProven', { name, rolls: rolls.length, least: least.rolls }),
        remedy: message('order.cuts.notProvenRemedy'),
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

function notCountedFinding({ code, thingId, name }: NotCounted): Finding {
  return finding(code, [thingId], {
    severity: 'notKnown',
    message: message(`order.notCounted.${code}`, { name }),
    remedy: message('order.notCounted.remedy'),
    thingIds: [thingId],
  });
}

function unserved(parts: readonly OrderPart[]): Quantity[] {
  const byKey = new Map(parts.flatMap((part) => part.unserved.map((quantity) => [quantity.key, quantity])));
  return [...byKey.values()];
}

function unservedFinding(quantity: Quantity): Finding {
  const add: Fix = { label: message('order.noItem.fix'), edit: addItemFor(quantity) };
  return finding('noItem', [quantity.key], {
    severity: 'warning',
    message: message('order.noItem.message', { name: quantity.name }),
    remedy: message('order.noItem.remedy'),
    thingIds: thingsOf(quantity),
    fixes: [add],
  });
}

function thingsOf({ pieces }: Quantity): string[] {
  return [...new Set(pieces.flatMap(({ thingIds }) => thingIds))];
}

function unpriced(parts: readonly OrderPart[]): Finding[] {
  const items = new Set(
    parts.flatMap(({ lines }) => lines.filter(({ cost }) => cost.net === null).map(({ item }) => item.name)),
  );
  const work = new Map(
    parts.flatMap(({ labour }) =>
      labour.filter(({ cost }) => cost.net === null).map(({ quantity }) => [quantity.key, quantity.name]),
    ),
  );
  if (items.size + work.size === 0) return [];
  return [
    finding('noPrice', [], {
      severity: 'warning',
      message: message('order.noPriceOf.message', { items: [...items], work: [...work.values()] }),
      remedy: message('order.noPriceOf.remedy'),
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
      message: message('order.inventedPrices.message', { prices: items.size, rates: rates.size }),
      remedy: message('order.inventedPrices.remedy'),
    }),
  ];
}

function currency({ settings }: OrderInput, { parts }: Order): Finding[] {
  if (settings.currency !== null || parts.every(({ lines }) => lines.length === 0)) return [];
  return [
    finding('noCurrency', [], {
      severity: 'notKnown',
      message: message('order.noCurrency.message'),
      remedy: message('order.noCurrency.remedy'),
    }),
  ];
}
