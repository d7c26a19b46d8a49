import { newThing } from '../kinds/describe.ts';
import { orderSettings } from '../kinds/order.ts';
import type { OrderSettings } from './things.ts';

/** The settings of an order of which nothing is said yet; sources beside each in `core/kinds/order.ts`. */
export const orderDefaults: OrderSettings = newThing(orderSettings, {});
