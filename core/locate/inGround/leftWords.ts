import type { Fate, InGround } from '../../model/inGroundThings.ts';
import { capital } from '../../words/text.ts';

type Left = Pick<InGround, 'fate' | 'was'>;

/** "Old crossing under G1" */
export function leftHeading({ name }: Pick<InGround, 'name'>): string {
  return capital(name);
}

const cableInShort: Readonly<Record<Fate, string>> = {
  inUse: 'may be live',
  dead: 'dead, left in the ground',
  takenOut: 'taken out',
};

/** What has become of it, in a word or two, for lists, tags and labels. Stakes are not cut off: they lie there or not. */
export function fateInShort({ fate, was }: Left): string {
  return was.what === 'earthField' && fate !== 'takenOut' ? 'left in the ground' : cableInShort[fate];
}

/** What that means for somebody who stands there; `since` as it is to be read. */
export function fateInWords(left: Left, since: string | null): string {
  const drawn = since === null ? 'No longer in the drawing' : `No longer in the drawing since ${since}`;
  if (left.fate === 'takenOut') return `${drawn}. It was taken out of the ground, as recorded.`;
  if (left.was.what === 'earthField') return `${drawn}, and left in the ground as far as this file knows.`;
  return left.fate === 'dead'
    ? `${drawn}. It was left in the ground, cut off at both ends as recorded; prove it dead all the same.`
    : `${drawn}, and nobody has said that it is cut off: take it for live.`;
}
