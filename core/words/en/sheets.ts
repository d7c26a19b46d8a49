import { common } from './sheets/common.ts';
import { dig, stake } from './sheets/find.ts';
import { map } from './sheets/map.ts';
import { yardstick } from './sheets/yardstick.ts';

/** What stands on paper, and on the phone page with it. */
export const sheets = { common, map, stake, dig, yardstick };
