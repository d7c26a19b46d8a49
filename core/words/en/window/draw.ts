import type { Figures } from '../../types.ts';
import { crossing } from './draw/crossing.ts';
import { details } from './draw/details.ts';
import { fenceTypes } from './draw/fenceTypes.ts';
import { firstSteps } from './draw/firstSteps.ts';
import { lists } from './draw/lists.ts';
import { services } from './draw/services.ts';

/** The Draw workspace. */
export const draw = {
  figures: {
    fence: 'fence',
    fed: 'live, fed',
    paddocks: ({ count }: { count: number }, f: Figures) =>
      f.plural(count, { one: 'paddock', other: `${f.number(count)} paddocks` }),
    pipe: 'pipe under gates',
  },
  nothingWrong: 'The checks find nothing wrong with the drawing.',
  firstSteps,
  lists,
  fenceTypes,
  services,
  details,
  crossing,
};
