import type { InGround } from '../../model/inGroundThings.ts';
import { type Message, message } from '../../words/message.ts';
import { capital } from '../../words/text.ts';

type Left = Pick<InGround, 'fate' | 'was'>;

/** "Old crossing under G1" */
export function leftHeading({ name }: Pick<InGround, 'name'>): string {
  return capital(name);
}

/** Stakes are not cut off: they lie there or not. */
function standingOf({ fate, was }: Left) {
  return was.what === 'earthField' && fate !== 'takenOut' ? 'stakes' : fate;
}

/** What has become of it, in a word or two, for lists, tags and labels. */
export function fateInShort(left: Left): Message {
  return message(`locate.buried.fate.${standingOf(left)}`);
}

/** What that means for somebody who stands there. */
export function fateInWords(left: Left & Pick<InGround, 'since'>): Message {
  return message(`locate.buried.meaning.${standingOf(left)}`, { since: left.since });
}
