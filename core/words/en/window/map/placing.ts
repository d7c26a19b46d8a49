import type { Figures } from '../../../types.ts';

type Point = { readonly number: number; readonly missM: number | null; readonly suspect: boolean };

/** Placing a picture by hand. */
export const placing = {
  beside: 'That is beside the picture. Click on the picture itself.',
  firstOfTwo: 'Click the first of two places on the picture whose distance you know, such as an end of its scale bar.',
  otherPlace: 'Click the other place on the picture.',
  knownPlace: 'Click a place on the picture that you know: a corner, a post, a gate.',
  measure: 'Type the distance between the two places; a bearing too, if you know it. Enter.',
  really:
    'Click where that place really is (posts and fences draw the pointer), or type its coordinates in the inspector.',
  distance: 'Type the distance between the two places.',
  /** Beside a control point: its number, how far the picture misses it, and whether it is the one to look at again. */
  point: ({ number, missM, suspect }: Point, f: Figures) =>
    `${f.number(number)}${missM === null ? '' : `: ${f.tape(missM)}`}${suspect ? ', look at this one' : ''}`,
};
