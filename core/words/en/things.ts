import { capital } from '../text.ts';
import type { Figures, ThingRef } from '../types.ts';

/** What each kind is called in a sentence. */
export const kinds = {
  property: 'property',
  fenceType: 'fence type',
  fenceLine: 'fence line',
  post: 'post',
  gateway: 'gateway',
  crossing: 'crossing',
  switch: 'cut-out switch',
  switchRule: 'word on a switch place',
  switchCandidate: 'switch place',
  energiser: 'energiser',
  leadOut: 'lead-out',
  earthField: 'earth field',
  paddock: 'paddock name',
  service: 'service',
  conductor: 'conductor',
  reading: 'reading',
  orderSettings: 'order',
  fenceMake: 'make of a fence type',
  catalogueItem: 'item of the price list',
  kit: 'kit',
  labourRate: 'labour rate',
  rollOnHand: 'roll on hand',
  stage: 'stage',
  stageMark: 'place in a stage',
  keptPlan: 'kept plan',
  underlay: 'map underneath',
  coordinateSettings: 'coordinate system',
  builtMark: 'mark of what is built',
  crossingRecord: 'record of a crossing',
  buriedPoint: 'buried point',
  photo: 'photo',
  testRun: 'test run',
  earthTest: 'earth test',
  inGround: 'thing left in the ground',
  handover: 'handover',
  faultHunt: 'fault search',
  ground: 'heights of the ground',
};

/** What the services are called. */
export const services = {
  powerLine: 'power line',
  waterPipe: 'water pipe',
  gasPipe: 'gas pipe',
  dataCable: 'data cable',
  drain: 'drain',
  road: 'road',
  path: 'path',
  creek: 'creek',
  floodZone: 'flood-prone ground',
  earthElectrode: 'mains or phone earth',
};

/** The eight directions. */
export const compass = {
  north: 'north',
  'north-east': 'north-east',
  east: 'east',
  'south-east': 'south-east',
  south: 'south',
  'south-west': 'south-west',
  west: 'west',
  'north-west': 'north-west',
};

/** A service as a sentence calls it. */
export type ServiceRef = { readonly what: keyof typeof services; readonly name: string };

/** The power line "Overhead line, 11 kV", inside of a sentence. */
export function theService({ what, name }: ServiceRef): string {
  return `the ${services[what]} "${name}"`;
}

export const things = {
  kinds,
  services,
  compass,
  /** Over the arrow that points north. */
  northLetter: 'N',
  /** A thing inside of a sentence. */
  called: ({ kind, name }: ThingRef) => (name ? `${kinds[kind]} ${name}` : `this ${kinds[kind]}`),
  /** The same at its head. */
  headed: ({ kind, name }: ThingRef) => capital(name ? `${kinds[kind]} ${name}` : `this ${kinds[kind]}`),
  /** The end of a list that is cut off. */
  more: ({ count }: { count: number }, f: Figures) => `${f.number(count)} more`,
  notKnown: 'not known',
  noPrice: 'no price',
  /** Several whole sentences, one after another. */
  sentences: ({ all }: { all: readonly string[] }) => all.join(' '),
};
