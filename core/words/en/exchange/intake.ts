import type { Figures, Phrase, ThingRef } from '../../types.ts';

type Kind = ThingRef['kind'];

/** Why a piece of a file could not be taken over, as the end of a sentence about it. */
export const taken = {
  /** What an edit would refuse, its sentence as a clause. */
  refused: ({ sentence }: { sentence: Phrase }, f: Figures) => asClause(f.say(sentence)),
  crossesItself: ({ times }: { times: number }, f: Figures) =>
    `it crosses itself more than ${f.number(times)} times, as the track of a receiver that lay still does`,
  noFenceNear: ({ withinM }: { withinM: number }, f: Figures) => `no fence line is within ${f.length(withinM)} of it`,
  missingField: ({ field }: { field: string }) => `its "${field}" is missing`,
  wrongField: ({ field }: { field: string }) => `its "${field}" is not as it should be`,
  unknown: ({ why }: { why: Phrase }, f: Figures) => `what this version does not know of it ${f.say(why)}`,
  secondCrossing: 'its gateway has another crossing already',
  secondOfCrossing: 'its crossing has another one of these already',
  recordName: 'its name is not that of its crossing’s record',
  noSwitchPlace: 'it names no place for a switch',
  notThere: ({ kind }: { kind: Kind }, f: Figures) => `its ${f.kind(kind)} is not there`,
  twice: ({ kind }: { kind: Kind }, f: Figures) => `the file gives this ${f.kind(kind)} twice`,
  noFix: 'it lies at latitude 0, longitude 0, where a receiver without a fix puts its points',
  far: ({ awayM, from }: { awayM: number; from: 'property' | 'rest' }, f: Figures) =>
    `it lies ${f.length(awayM)} from ${from === 'property' ? 'the middle of the property' : 'the rest'}`,
};

/** What is said of an import as a whole. */
export const intake = {
  moreStrays: ({ pieces }: { pieces: number }, f: Figures) =>
    `${f.number(pieces)} further pieces that lie far from the rest were left out.`,
  standing: ({ lines, withinM }: { lines: number; withinM: number }, f: Figures) =>
    `Where ${lines === 1 ? 'one line stays' : `${f.number(lines)} lines stay`} in one place, as a receiver that lies still writes it, the points were drawn together, within ${f.length(withinM)}: with all of them it would be a tangle.`,
  tooManyHeights: ({ heights, most }: { heights: number; most: number }, f: Figures) =>
    `Its heights were left out: ${f.number(heights)} are more than a property can hold (${f.number(most)}).`,
  settingsStay: 'The settings of the property itself stay as they are.',
  renamed: ({ kind, name, called }: { kind: Kind; name: string; called: string }, f: Figures) =>
    `The ${f.kind(kind)} ${name} of the file is called ${called} here, because that name is taken.`,
  endsMoved: ({ fences }: { fences: number }, f: Figures) =>
    `The ends of ${fences === 1 ? 'one fence' : `${f.number(fences)} fences`} were moved onto what they meet.`,
};

function asClause(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1).replace(/\.$/, '');
}
