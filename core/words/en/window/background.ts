import { maps } from './background/maps.ts';
import { pictures } from './background/pictures.ts';
import { placing } from './background/placing.ts';

/** Background maps: the list, how a picture is placed, how it comes in. */
export const background = { ...maps, placing, pictures };
