import type { LabourUnit } from '../model/things.ts';
import type { QuantityGroup, QuantityUnit } from './types.ts';

/** What a take-off quantity is of. Its key names it in price lists and kits; a part after ":" tells its kind or size. */
export interface Measure {
  readonly key: string;
  readonly group: QuantityGroup;
  readonly name: string;
  readonly unit: QuantityUnit;
  readonly cut: boolean;
}

/** The sort of thing before the ":" of a key. */
export type MeasureWord = keyof typeof words;

const words = {
  wire: ['wire', 'Fence wire', 'm'],
  barbedWire: ['wire', 'Barbed wire', 'm'],
  strainer: ['posts', 'Strainer post', 'each'],
  gatePost: ['posts', 'Gate post', 'each'],
  anglePost: ['posts', 'Angle post', 'each'],
  stay: ['posts', 'Stay', 'each'],
  post: ['posts', 'Intermediate post', 'each'],
  dropper: ['posts', 'Dropper', 'each'],
  insulator: ['fittings', 'Post insulator', 'each'],
  strainInsulator: ['fittings', 'Strain insulator', 'each'],
  joint: ['fittings', 'Joint clamp', 'each'],
  tightener: ['fittings', 'Wire tightener', 'each'],
  staple: ['fittings', 'Staple or clip for wire that is not live', 'each'],
  gate: ['gateways', 'Gate leaf', 'each'],
  gateway: ['gateways', 'Gateway hardware', 'each'],
  pipe: ['crossings', 'Pipe', 'm'],
  cable: ['crossings', 'Live cable', 'm'],
  earthCable: ['crossings', 'Earth cable', 'm'],
  cableClamp: ['crossings', 'Cable clamp', 'each'],
  earthClamp: ['crossings', 'Earth clamp', 'each'],
  seal: ['crossings', 'Riser seal', 'each'],
  lug: ['crossings', 'Cable lug', 'each'],
  switch: ['switches', 'Cut-out switch', 'each'],
  energiser: ['supply', 'Energiser', 'each'],
  surge: ['supply', 'Surge protection', 'each'],
  stake: ['supply', 'Earth stake', 'each'],
  stakeClamp: ['supply', 'Stake clamp', 'each'],
  earthLead: ['supply', 'Earth lead', 'm'],
  sign: ['signs', 'Warning sign', 'each'],
  work: ['work', 'Work', 'each'],
} as const satisfies Record<string, readonly [QuantityGroup, string, QuantityUnit]>;

/** A conductor's own name says what it is. */
const namedByDetail: ReadonlySet<MeasureWord> = new Set(['wire', 'cable']);

/** Lengths that must not be joined: whatever lies in the ground. */
const cutWords: ReadonlySet<string> = new Set(['pipe', 'cable', 'earthCable']);

/** The measure of a sort of thing; `kind` tells it from others of the sort, `detail` says so in words. */
export function measureOf(word: MeasureWord, kind?: string | number, detail?: string): Measure {
  const [group, name, unit] = words[word];
  return {
    key: kind === undefined ? word : `${word}:${kind}`,
    group,
    name: detail === undefined ? name : namedByDetail.has(word) ? detail : `${name}, ${detail}`,
    unit,
    cut: cutWords.has(word),
  };
}

const workWords: Readonly<Record<LabourUnit, readonly [name: string, unit: QuantityUnit]>> = {
  fenceKm: ['Build fence', 'km'],
  strainer: ['Set a strainer or gate post', 'each'],
  gateway: ['Hang a gateway', 'each'],
  crossing: ['Make a crossing', 'each'],
  trenchM: ['Dig and fill trench', 'm'],
  switch: ['Fit a switch', 'each'],
  stake: ['Drive an earth stake', 'each'],
  energiser: ['Set up an energiser', 'each'],
};

export const labourUnits = Object.keys(workWords) as readonly LabourUnit[];

export function workMeasure(per: LabourUnit): Measure {
  const [name, unit] = workWords[per];
  return { key: `work:${per}`, group: 'work', name, unit, cut: false };
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
