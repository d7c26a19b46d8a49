import type { Figures } from '../types.ts';
import { answers } from './survey/answers.ts';
import { plan } from './survey/plan.ts';
import { atSpot, bareSpot, type Spot } from './survey/spots.ts';
import { switches } from './survey/switches.ts';
import { tests } from './survey/tests.ts';

/** What the survey says: sections, registers, test sheets, answers in a sentence. */
export const survey = {
  answers,
  plan,
  switches,
  tests,
  /** "end of F12". */
  spot: ({ spot }: { spot: Spot }, f: Figures) => bareSpot(spot, f),
  /** "at the end of F12". */
  atSpot: ({ spot }: { spot: Spot }, f: Figures) => atSpot(spot, f),
  awayFromFence: 'away from the live fence',
  unnamedPaddock: 'Not named yet',
};
