import type { Figures, Phrase } from '../../types.ts';

/** A cut length and what it is for. */
type Cut = { readonly label: Phrase; readonly lengthM: number };

const cutsInWords = (cuts: readonly Cut[], f: Figures) =>
  cuts.map(({ label, lengthM }) => `${f.say(label)} (${f.tape(lengthM)})`).join(', ');

/** Prices without an end of the list: four, and how many more. */
const mostNames = 4;

/** What stands in the way of an order. */
export const gone = {
  item: 'This item is not in the price list any more.',
  kit: 'This kit is not in the price list any more.',
};

export const buildingWire = {
  ordered: ({ name }: { name: Phrase }, f: Figures) => `${f.say(name)}: it is in this order as the live cable.`,
  notOffered: ({ name }: { name: Phrase }, f: Figures) =>
    `${f.say(name)}: it is drawn as the live cable; the price list does not offer it, so it is not in the order.`,
  remedy: 'Select fence lead-out cable rated 10 kV or more in Draw, and the order counts that.',
};

export const coilLength = {
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
};

export const cuts = {
  tooLong: ({ name, cuts }: { name: Phrase; cuts: readonly Cut[] }, f: Figures) =>
    `${f.say(name)}: longer than every roll that is on hand or for sale: ${cutsInWords(cuts, f)}. It would need a joint underground.`,
  tooLongRemedy: 'Add a longer roll to the price list or to the rolls on hand.',
  withoutRoll: ({ name, cuts }: { name: Phrase; cuts: readonly Cut[] }, f: Figures) =>
    `${f.say(name)}: the rolls on hand are too few, and none is for sale: ${cutsInWords(cuts, f)}.`,
  withoutRollRemedy: 'Put a roll of it into the price list.',
  notProven: ({ name, rolls, least }: { name: Phrase; rolls: number; least: number }, f: Figures) =>
    `${f.say(name)}: cut from ${f.number(rolls)} rolls; it is not proven that ${f.number(least)} would not do.`,
  notProvenRemedy: 'The list can be used as it stands.',
};

export const notCounted = {
  noFenceType: ({ name }: { name: string }) =>
    `The fence type of ${name} is missing: its wire and posts are not counted.`,
  lineNotOnEarth: ({ name }: { name: string }) => `${name} has corners that are no place on earth: it is not counted.`,
  gatewayWithoutOpening: ({ name }: { name: string }) =>
    `Gateway ${name} makes no opening in its fence: it is not counted.`,
  remedy: 'Fix it in Draw, and the order counts it.',
};

export const noItem = {
  message: ({ name }: { name: Phrase }, f: Figures) =>
    `${f.say(name)}: nothing in the price list serves it, so it is not in the order.`,
  remedy: 'Add an item or a kit for it to the price list.',
  fix: 'Add an item for it',
};

export const noPriceOf = {
  message: ({ items, work }: { items: readonly string[]; work: readonly Phrase[] }, f: Figures) => {
    const names = [...items, ...work.map((one) => f.say(one))];
    const more = names.length > mostNames ? ` and ${f.number(names.length - mostNames)} more` : '';
    return `Without a price, and not in the total: ${names.slice(0, mostNames).join('; ')}${more}.`;
  },
  remedy: 'Enter the prices in the price list.',
};

export const inventedPrices = {
  message: ({ prices, rates }: { prices: number; rates: number }, f: Figures) =>
    `${f.number(prices)} prices and ${f.number(rates)} labour rates in this order are invented, to show how it works.`,
  remedy: "Enter your supplier's prices, or bring them in as CSV.",
};

export const noCurrency = {
  message: 'It is not said which currency the prices are in.',
  remedy: 'Enter it under Counting rules.',
};
