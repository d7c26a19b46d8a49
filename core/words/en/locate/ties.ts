import type { Figures, Phrase } from '../../types.ts';

/** A tape: how long it was, and the post that it was held to. */
type Tape = { readonly distanceM: number; readonly post: Phrase };
/** By how much it is off; null: that has no meaning. */
type Off = { readonly offM: number | null };

function tapeWords({ distanceM, post }: Tape, f: Figures): string {
  return `${f.tape(distanceM)} from ${f.say(post)}`;
}

function by(offM: number | null, f: Figures): string {
  return offM === null ? '' : ` by ${f.tape(offM)}`;
}

const close = 'That is within what a tape can be off, so the place between is taken.';

/** What the tapes of a point come to. */
export const ties = {
  none: 'No tie yet. Measure from two or more posts that do not move.',
  one: 'One tie only: the point lies somewhere on a circle. Measure from another post.',
  onTheLine: 'The point stands on the line of the posts.',
  agree: ({ count }: { count: number }) => `The ${count} ties agree.`,
  within: ({ withinM }: { withinM: number }, f: Figures) => `Within ${f.tape(withinM)}, 19 times in 20.`,
  fitSeveral: (
    {
      places,
      sides,
      apartM,
      withinM,
      likelier,
    }: {
      places: readonly Phrase[];
      /** The places are named by their sides. */
      sides: boolean;
      apartM: number;
      withinM: number;
      likelier: boolean;
    },
    f: Figures,
  ) => {
    const names = places.map(f.say);
    const where = sides
      ? `${names.map((name) => `one on the ${name}`).join(', ')} of the line of the posts`
      : names.join(', ');
    const count = places.length === 2 ? 'two places' : `${places.length} places`;
    const nearer = likelier ? ` The one on the ${names[0]} is nearer to where it was drawn; both stay open.` : '';
    return `These tapes fit ${count}, ${f.tape(apartM)} apart: ${where}. Nobody said which. Whichever it is, it lies within ${f.tape(withinM)}, 19 times in 20.${nearer}`;
  },
  doNotMeet: ({ tapes }: { tapes: readonly Tape[] }, f: Figures) =>
    `These tapes do not meet: ${tapes.map((tape) => tapeWords(tape, f)).join(', ')}.`,
  tooFew: 'Two ties or more are needed.',
  onePost: 'All ties are from one post. Measure from another one too.',
  disagree: ({ offM }: Off, f: Figures) =>
    `The ties do not meet: the worst is off${by(offM, f)}. Measure all of them again.`,
  wrong: ({ tape, offM }: Off & { tape: Tape }, f: Figures) =>
    `The ties do not meet: the ${tapeWords(tape, f)} can't be right; it is off${by(offM, f)} from what the others say. Measure it again.`,
  justMeet: 'The tapes only just meet, on the line of the posts.',
  tooShort: ({ offM, isClose }: Off & { isClose: boolean }, f: Figures) =>
    `Both tapes together are shorter than the posts are apart${by(offM, f)}. ${isClose ? close : 'One of them is too short, or names the wrong post.'}`,
  tooLong: ({ tape, offM, isClose }: Off & { tape: Tape; isClose: boolean }, f: Figures) =>
    `The tapes do not meet: the ${tapeWords(tape, f)} is too long${by(offM, f)} for the other one and the distance between the posts. ${isClose ? close : 'Measure both again.'}`,
};
