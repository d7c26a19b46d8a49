import type { LabourUnit } from '../model/things.ts';
import { type Message, message } from '../words/message.ts';
import type { QuantityGroup, QuantityUnit } from './types.ts';

/** What a take-off quantity is of. Its key names it in price lists and kits; a part after ":" tells its kind or size. */
export interface Measure {
  readonly key: string;
  readonly group: QuantityGroup;
  readonly name: Message;
  readonly unit: QuantityUnit;
  readonly cut: boolean;
}

/** The sort of thing before the ":" of a key. */
export type MeasureWord = keyof typeof words;

const words = {
  wire: ['wire', 'm'],
  barbedWire: ['wire', 'm'],
  strainer: ['posts', 'each'],
  gatePost: ['posts', 'each'],
  anglePost: ['posts', 'each'],
  stay: ['posts', 'each'],
  post: ['posts', 'each'],
  dropper: ['posts', 'each'],
  insulator: ['fittings', 'each'],
  strainInsulator: ['fittings', 'each'],
  joint: ['fittings', 'each'],
  tightener: ['fittings', 'each'],
  staple: ['fittings', 'each'],
  gate: ['gateways', 'each'],
  gateway: ['gateways', 'each'],
  pipe: ['crossings', 'm'],
  cable: ['crossings', 'm'],
  earthCable: ['crossings', 'm'],
  cableClamp: ['crossings', 'each'],
  earthClamp: ['crossings', 'each'],
  seal: ['crossings', 'each'],
  lug: ['crossings', 'each'],
  switch: ['switches', 'each'],
  energiser: ['supply', 'each'],
  surge: ['supply', 'each'],
  stake: ['supply', 'each'],
  stakeClamp: ['supply', 'each'],
  earthLead: ['supply', 'm'],
  sign: ['signs', 'each'],
} as const satisfies Record<string, readonly [QuantityGroup, QuantityUnit]>;

/** Lengths that must not be joined: whatever lies in the ground. */
const cutWords: ReadonlySet<string> = new Set(['pipe', 'cable', 'earthCable']);

/** Sorts of which there are several: their kind or size says what each is called. */
const several = ['wire', 'gate', 'gateway', 'pipe', 'cable', 'switch', 'stake'] as const;
type SeveralOf = (typeof several)[number];

/** The measure of a sort of thing of which there is one kind. */
export function measureOf(word: Exclude<MeasureWord, SeveralOf>): Measure {
  return measured(word, word, message(`order.goods.${word}`));
}

/** The measure of a sort of thing; `kind` tells it from others of the sort. */
export function measureOfKind(word: SeveralOf, kind: string | number, name: Message): Measure {
  return measured(word, `${word}:${kind}`, name);
}

/** What a quantity is called that is only known by its key, as in a price list for other fences. */
export function nameOfMeasure(key: string): Message {
  const [word = '', kind] = key.split(':');
  if (!(word in words)) return message('order.goods.asWritten', { text: key });
  const sort = word as MeasureWord;
  if (kind === undefined)
    return isSeveral(sort) ? message(`order.goods.sorts.${sort}`) : message(`order.goods.${sort}`);
  if (sort === 'gateway' && (kind === 'single' || kind === 'double')) return message(`order.goods.gateway.${kind}`);
  return message('order.goods.ofKind', { sort: nameOfMeasure(sort), kind });
}

function isSeveral(word: MeasureWord): word is SeveralOf {
  return (several as readonly MeasureWord[]).includes(word);
}

function measured(word: MeasureWord, key: string, name: Message): Measure {
  const [group, unit] = words[word];
  return { key, group, name, unit, cut: cutWords.has(word) };
}

const workUnits: Readonly<Record<LabourUnit, QuantityUnit>> = {
  fenceKm: 'km',
  strainer: 'each',
  gateway: 'each',
  crossing: 'each',
  trenchM: 'm',
  switch: 'each',
  stake: 'each',
  energiser: 'each',
};

export const labourUnits = Object.keys(workUnits) as readonly LabourUnit[];

export function workMeasure(per: LabourUnit): Measure {
  const name = message(`order.work.${per}`);
  return { key: `work:${per}`, group: 'work', name, unit: workUnits[per], cut: false };
}

/** Whether a quantity is live cable, which must be made for the voltage of a fence. */
export function isLiveCable(key: string): boolean {
  return key === 'cable' || key.startsWith('cable:');
}

/** The conductor that a quantity of wire or live cable is of; null for any other quantity. */
export function conductorOf(key: string): string | null {
  return /^(?:wire|cable):(.+)$/.exec(key)?.[1] ?? null;
}

/** Whether what is bought or kept for `measure` serves the quantity `key`: the same, or its sort in general. */
export function serves(measure: string | null, key: string): boolean {
  return measure !== null && (measure === key || (!measure.includes(':') && key.startsWith(`${measure}:`)));
}
