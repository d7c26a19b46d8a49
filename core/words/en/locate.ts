import type { Figures, Phrase } from '../types.ts';
import { buried } from './locate/buried.ts';
import { basis, certainty, state } from './locate/certainty.ts';
import { depth } from './locate/depth.ts';
import { faultSearch } from './locate/faultSearch.ts';
import { ground } from './locate/ground.ts';
import { points, posts } from './locate/points.ts';
import { ties } from './locate/ties.ts';

/** Where the buried things lie, how sure that is, and what is asked before the ground changes. */
export const locate = {
  basis,
  certainty,
  state,
  posts,
  points,
  ties,
  depth,
  buried,
  ground,
  faultSearch,
  /** Several whole sentences, one after another. */
  together: ({ all }: { all: readonly Phrase[] }, f: Figures) => all.map(f.say).join(' '),
};
