import type { Figures } from '../types.ts';

/** A cut length and what it is for. */
type Cut = { readonly label: string; readonly lengthM: number };

const cutsInWords = (cuts: readonly Cut[], f: Figures) =>
  cuts.map(({ label, lengthM }) => `${label} (${f.tape(lengthM)})`).join(', ');

/** Prices without an end of the list: four, and how many more. */
const mostNames = 4;

/** What stands in the way of an order. */
export const order = {
  gone: ({ what }: { what: 'item' | 'kit' }) => `This ${what} is not in the price list any more.`,
  buildingWire: {
    ordered: ({ name }: { name: string }) => `${name}: it is in this order as the live cable.`,
    notOffered: ({ name }: { name: string }) =>
      `${name}: it is drawn as the live cable; the price list does not offer it, so it is not in the order.`,
    remedy: 'Select fence lead-out cable rated 10 kV or more in Draw, and the order counts that.',
  },
  coilLength: {
    message: (
      {
        name,
        packM,
        massKg,
        coilKg,
        usualM,
      }: { name: string; packM: number; massKg: number; coilKg: number; usualM: number },
      f: Figures,
    ) =>
      `${name}: ${f.length(packM)} of this wire weigh about ${f.number(massKg, 0)} kg; a coil of ${coilKg} kg holds about ${f.length(usualM)}.`,
    remedy: 'Read the length on the label and enter it in the price list: the number of coils follows from it.',
    fix: ({ coilKg, usualM }: { coilKg: number; usualM: number }, f: Figures) =>
      `Take coils of ${coilKg} kg, about ${f.length(usualM)}`,
  },
  cuts: {
    tooLong: ({ name, cuts }: { name: string; cuts: readonly Cut[] }, f: Figures) =>
      `${name}: longer than every roll that is on hand or for sale: ${cutsInWords(cuts, f)}. It would need a joint underground.`,
    tooLongRemedy: 'Add a longer roll to the price list or to the rolls on hand.',
    withoutRoll: ({ name, cuts }: { name: string; cuts: readonly Cut[] }, f: Figures) =>
      `${name}: the rolls on hand are too few, and none is for sale: ${cutsInWords(cuts, f)}.`,
    withoutRollRemedy: 'Put a roll of it into the price list.',
    notProven: ({ name, rolls, least }: { name: string; rolls: number; least: number }) =>
      `${name}: cut from ${rolls} rolls; it is not proven that ${least} would not do.`,
    notProvenRemedy: 'The list can be used as it stands.',
  },
  notCounted: {
    noFenceType: ({ name }: { name: string }) =>
      `The fence type of ${name} is missing: its wire and posts are not counted.`,
    lineNotOnEarth: ({ name }: { name: string }) =>
      `${name} has corners that are no place on earth: it is not counted.`,
    gatewayWithoutOpening: ({ name }: { name: string }) =>
      `Gateway ${name} makes no opening in its fence: it is not counted.`,
    remedy: 'Fix it in Draw, and the order counts it.',
  },
  noItem: {
    message: ({ name }: { name: string }) => `${name}: nothing in the price list serves it, so it is not in the order.`,
    remedy: 'Add an item or a kit for it to the price list.',
    fix: 'Add an item for it',
  },
  noPrice: {
    message: ({ names }: { names: readonly string[] }, f: Figures) =>
      `Without a price, and not in the total: ${names.slice(0, mostNames).join('; ')}${names.length > mostNames ? ` and ${f.number(names.length - mostNames)} more` : ''}.`,
    remedy: 'Enter the prices in the price list.',
  },
  inventedPrices: {
    message: ({ prices, rates }: { prices: number; rates: number }, f: Figures) =>
      `${f.number(prices)} prices and ${f.number(rates)} labour rates in this order are invented, to show how it works.`,
    remedy: "Enter your supplier's prices, or bring them in as CSV.",
  },
  noCurrency: {
    message: 'It is not said which currency the prices are in.',
    remedy: 'Enter it under Counting rules.',
  },
};
