import type { Thing } from '../../core/model/things.ts';
import type { PlanFigures } from '../../core/quantities/comparePlans.ts';
import type { Order } from '../../core/quantities/order/order.ts';
import type { TakeOff } from '../../core/quantities/types.ts';

/** What the window asks of the room where orders are worked out; answers carry the number of the question. */
export interface ToOrderRoom {
  readonly type: 'order' | 'figures';
  readonly number: number;
  readonly things: readonly Thing[];
}

export type FromOrderRoom = { readonly number: number } & (
  | { readonly type: 'order'; readonly takeOff: TakeOff; readonly order: Order }
  | { readonly type: 'failed'; readonly message: string }
  | { readonly type: 'figures'; readonly figures: PlanFigures | null }
);
