import type { Remote } from 'comlink';
import { create } from 'zustand';
import { kindsIn } from '../../core/kinds/allKinds.ts';
import type { Project } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import type { PlanFigures } from '../../core/quantities/comparePlans.ts';
import type { Order } from '../../core/quantities/order/order.ts';
import type { TakeOff } from '../../core/quantities/types.ts';
import { faultText } from '../state/report.ts';
import { type Called, callWorker, Ended } from './callWorker.ts';
import type { OrderFunctions } from './order.worker.ts';

/** What was counted and priced last, and of which project. */
export interface WorkedOrder {
  readonly of: Project;
  readonly takeOff: TakeOff;
  readonly order: Order;
}

interface OrderRoom {
  readonly worked: WorkedOrder | null;
  readonly busy: boolean;
  readonly failed: string | null;
}

export const useOrderRoom = create<OrderRoom>(() => ({ worked: null, busy: false, failed: null }));

/** Work on an old state that has gone on this long is dropped when a new one comes in. */
const patienceMs = 400;

/** What has no answer after so long is given up. */
const longestMs = 120_000;

let room: Called<OrderFunctions> | null = null;
/** The order that is being worked out. */
let asking: { readonly project: Project; readonly since: number } | null = null;

/** Counts and prices a project beside the window; the answer comes into `useOrderRoom`. */
export function workOutOrder(project: Project): void {
  if (asking ? asking.project === project : useOrderRoom.getState().worked?.of === project) return;
  if (asking && performance.now() - asking.since > patienceMs) drop();
  const asked = { project, since: performance.now() };
  asking = asked;
  useOrderRoom.setState({ busy: true, failed: null });
  const settle = (outcome: Partial<OrderRoom>) => {
    if (asking !== asked) return;
    asking = null;
    useOrderRoom.setState({ busy: false, ...outcome });
  };
  ask(({ order }) => order(thingsFor(project))).then(
    (worked) => settle({ worked: { of: project, ...worked } }),
    (error: unknown) => settle({ failed: faultText(error) }),
  );
}

/** The figures by which a plan is weighed, or why they can't be worked out. */
export type WorkedFigures =
  | { readonly ok: true; readonly figures: PlanFigures }
  | { readonly ok: false; readonly why: string };

export async function workOutFigures(project: Project): Promise<WorkedFigures> {
  try {
    return { ok: true, figures: await ask(({ figures }) => figures(thingsFor(project))) };
  } catch (error) {
    // Only for the sake of an order that could not wait.
    if (error instanceof Ended) return workOutFigures(project);
    return { ok: false, why: faultText(error) };
  }
}

/** What is counted or priced; photos and the like stay behind. */
function thingsFor(project: Project): Thing[] {
  return kindsIn('counted').flatMap((kind) => [...project[kind].values()]);
}

/** Asks the room, which begins with the first question; one that was lost is followed by another at the next. */
function ask<T>(question: (functions: Remote<OrderFunctions>) => Promise<T>): Promise<T> {
  room ??= callWorker<OrderFunctions>(new Worker(new URL('./order.worker.ts', import.meta.url), { type: 'module' }), {
    onLoss: () => {
      room = null;
    },
    patienceMs: longestMs,
  });
  return room.ask(question);
}

/** Figures are written otherwise from now on: what was worked out is worked out anew. */
export function forgetOrder(): void {
  drop();
  asking = null;
  useOrderRoom.setState({ worked: null, busy: false, failed: null });
}

function drop(): void {
  room?.end();
  room = null;
}
