import { card } from './sheets/cards.ts';
import { common } from './sheets/common.ts';
import { dig, stake } from './sheets/find.ts';
import { map } from './sheets/map.ts';
import { order } from './sheets/order.ts';
import { book, pack, tag } from './sheets/pack.ts';
import { cells, crossings, heads, paddocks, sections, switches } from './sheets/tables.ts';
import { changes, left, materials, power, testResults, testSheet } from './sheets/tests.ts';
import { yardstick } from './sheets/yardstick.ts';

/** What stands on paper, and on the phone page with it. */
export const sheets = {
  common,
  heads,
  cells,
  map,
  sections,
  paddocks,
  switches,
  crossings,
  testSheet,
  testResults,
  power,
  changes,
  materials,
  left,
  order,
  pack,
  tag,
  card,
  book,
  stake,
  dig,
  yardstick,
};
