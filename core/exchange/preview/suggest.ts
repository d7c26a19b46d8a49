import { plainWords } from '../../words/figures.ts';
import type { Texts } from '../../words/message.ts';
import { readFileMeasure } from '../../words/numbers/read.ts';
import { type RawObject, withoutControls } from './raw.ts';
import type { ImportAs, PreviewFeature } from './types.ts';

const longestName = 120;

/** Properties that commonly hold a name, in the order in which they are believed. */
const nameFields = ['name', 'title', 'label', 'description', 'id', 'fid'];

/** What the pieces of a sort of file are called. */
export type Noun = keyof Texts['exchange']['unnamed'];

/** What a feature is called in its file, or "Feature 3", by the word of that sort of file. */
export function nameOf(properties: RawObject, id: unknown, index: number, noun: Noun): string {
  const fields = Object.entries(properties);
  const candidates = [
    ...nameFields.flatMap((wanted) => fields.filter(([field]) => field.toLowerCase() === wanted).map(([, v]) => v)),
    id,
  ];
  for (const value of candidates) {
    if (typeof value !== 'string' && typeof value !== 'number') continue;
    const name = withoutControls(String(value)).slice(0, longestName);
    if (name !== '') return name;
  }
  return unnamed(noun, index);
}

/** What a piece is called that has no name. */
export function unnamed(noun: Noun, index: number): string {
  return plainWords().exchange.unnamed[noun]({ number: index + 1 });
}

export const possibleOf: Readonly<Record<PreviewFeature['shape'], readonly ImportAs[]>> = {
  line: [
    'fenceLine',
    'boundary',
    'powerLine',
    'waterPipe',
    'gasPipe',
    'dataCable',
    'drain',
    'road',
    'path',
    'creek',
    'leaveOut',
  ],
  outline: ['fenceLine', 'boundary', 'floodZone', 'road', 'creek', 'leaveOut'],
  point: ['post', 'gateway', 'energiser', 'earthElectrode', 'leaveOut'],
  none: ['leaveOut'],
};

/** Words in a feature's properties that tell what it is, in the order in which they are believed. */
const tellingWords: readonly (readonly [RegExp, ImportAs])[] = [
  [/\bgate(way)?s?\b/, 'gateway'],
  [/\benergi[sz]er\b/, 'energiser'],
  [/\belectrode\b/, 'earthElectrode'],
  [/\bflood/, 'floodZone'],
  [/\bpower|\bvoltage\b|\belectricity\b/, 'powerLine'],
  [/\bgas\b/, 'gasPipe'],
  [/\bwater (main|pipe)|\bpipeline\b|\bwater_?pipe\b/, 'waterPipe'],
  [/\bdata cable\b|\btelephone\b|\bfibre\b|\bfiber\b/, 'dataCable'],
  [/\bdrain\b/, 'drain'],
  [/\bcreek\b|\bstream\b|\briver\b|\bwaterway\b/, 'creek'],
  [/\bfootpath\b|\bfootway\b|\bwalking\b|\bpath\b/, 'path'],
  [/\broad\b|\btrack\b|\bhighway\b/, 'road'],
  [/\bboundary\b/, 'boundary'],
  [/\bfence\b/, 'fenceLine'],
];

/** A guess at what a feature is, from the words in its properties; else a fence line, or a post. */
export function suggestionFor(shape: PreviewFeature['shape'], properties: RawObject, track = false): ImportAs {
  const written = Object.entries(properties)
    .slice(0, 50)
    .map(([field, value]) => (typeof value === 'string' ? `${field} ${value.slice(0, 200)}` : field))
    .join(' | ')
    .toLowerCase();
  // What a receiver calls a track says nothing of the ground.
  const words = track ? written.replaceAll(/\btracks?\b/g, '') : written;
  const possible = possibleOf[shape];
  const told = tellingWords.find(([word, as]) => possible.includes(as) && word.test(words));
  return told ? told[1] : possible[0]!;
}

/** A number from a property of one of these names, in `unit` and within bounds: "4.2", "4.2 m", "14 ft", "11,000 V". */
export function figureOf(
  properties: RawObject,
  names: readonly string[],
  unit: string,
  [least, most]: readonly [number, number],
): number | null {
  for (const [field, value] of Object.entries(properties)) {
    if (!names.includes(field.toLowerCase().replaceAll(/[_\s-]/g, ''))) continue;
    const figure = typeof value === 'string' ? readFileMeasure(firstFigure(value), unit) : value;
    if (typeof figure === 'number' && figure >= least && figure <= most) return figure;
  }
  return null;
}

/** The figure that a text begins with, and the unit behind it: "4.2 m" of "4.2 m (taped)". */
function firstFigure(text: string): string {
  return /^\s*[+-]?[\d., ]*\d\s*[a-z'"]*/i.exec(text)?.[0] ?? '';
}
