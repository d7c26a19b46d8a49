import { capital } from '../../text.ts';
import type { Figures, Phrase } from '../../types.ts';

/** Where a figure comes from. */
export const sources = {
  annealedCopper: 'IEC 60028, annealed copper',
  hardDrawnAluminium: 'IEC 60889, hard-drawn aluminium',
  zincCoatedSteel: 'IEC 60888, zinc-coated steel at 9 % IACS',
  ownConductor: 'entered by the user for the conductor in hand',
  insulatorsAlone: 'insulators alone; about 100 to the kilometre at some 50 Mohm each when damp and dusty',
  lightGrowth: 'a green stem of about 1 Mohm touching every 50 m or so',
  heavyGrowth:
    'green growth on the wire nearly everywhere; a few kilometres load an energiser beyond its rated 500 ohm',
  earthTest: 'Virginia Cooperative Extension SPES-204 (the procedure)',
  multipleRods: 'IEEE Std 142, multiplying factors for multiple rods',
  ruleOfThumb: 'Ontario field-crop bulletin "Correctly grounding an electric fence", 2018',
  soils:
    'O. S. Peters, "Ground Connections for Electrical Systems", US Bureau of Standards Technologic Paper 108 (1918), resistivities of different soils',
};

const marks = {
  standard: 'standard',
  published: 'published',
  commonPractice: 'common practice, no source',
  assumption: 'assumption',
};

/** What a figure rests on: the document, or the reasoning; null where there is none. */
export interface BasisValues {
  readonly mark: keyof typeof marks;
  readonly source: Phrase | null;
  readonly fromMemory: boolean;
}

/** "IEC 60888, zinc-coated steel at 9 % IACS (standard, from memory)". */
export function basisInWords({ mark, source, fromMemory }: BasisValues, f: Figures): string {
  if (source === null) return marks[mark];
  if (mark === 'assumption' || mark === 'commonPractice') return `${marks[mark]}: ${f.say(source)}`;
  return `${f.say(source)} (${marks[mark]}${fromMemory ? ', from memory' : ''})`;
}

/** The same at the head of a sentence. */
export function basisAtHead(basis: BasisValues, f: Figures): string {
  return capital(basisInWords(basis, f));
}
