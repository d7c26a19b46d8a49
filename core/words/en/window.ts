import { background } from './window/background.ts';
import { divide } from './window/divide.ts';
import { draw } from './window/draw.ts';
import { exchange } from './window/exchange.ts';
import { find } from './window/find.ts';
import { frame } from './window/frame.ts';
import { map } from './window/map.ts';
import { order } from './window/order.ts';
import { power } from './window/power.ts';
import { record } from './window/record.ts';

/** What stands in the window and nowhere else, by workspace. */
export const window = { frame, draw, divide, power, order, record, find, exchange, background, map };
