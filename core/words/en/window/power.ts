import { basics } from './power/basics.ts';
import { earth } from './power/earth.ts';
import { estimate } from './power/estimate.ts';
import { readings } from './power/readings.ts';
import { supply } from './power/supply.ts';

/** The Power workspace. */
export const power = { ...estimate, basics, earth, readings, supply };
