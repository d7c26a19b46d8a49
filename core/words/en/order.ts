import { cutList, pack, plan, sentence, wireNote } from './order/answers.ts';
import {
  buildingWire,
  coilLength,
  cuts,
  gone,
  inventedPrices,
  noCurrency,
  noItem,
  noPriceOf,
  notCounted,
} from './order/findings.ts';
import { goods, work } from './order/goods.ts';
import { pieces, posts } from './order/pieces.ts';
import { starting } from './order/starting.ts';

/** The order: what is counted, bought, cut and done, and what stands in its way. */
export const order = {
  buildingWire,
  coilLength,
  cutList,
  cuts,
  gone,
  goods,
  inventedPrices,
  noCurrency,
  noItem,
  noPriceOf,
  notCounted,
  pack,
  pieces,
  plan,
  posts,
  sentence,
  starting,
  wireNote,
  work,
};
