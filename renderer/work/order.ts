import { create } from 'zustand';
import { kindsIn } from '../../core/kinds/allKinds.ts';
import type { Project } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import type { PlanFigures } from '../../core/quantities/comparePlans.ts';
import type { Order } from '../../core/quantities/order/order.ts';
import type { TakeOff } from '../../core/quantities/types.ts';
import type { FromOrderRoom, ToOrderRoom } from './orderMessages.ts';

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

let worker: Worker | null = null;
let lastNumber = 0;
/** The order that is being worked out. */
let asking: { readonly number: number; readonly project: Project; readonly since: number } | null = null;
const waiting = new Map<number, (figures: PlanFigures | null) => void>();

/** Counts and prices a project beside the window; the answer comes into `useOrderRoom`. */
export function workOutOrder(project: Project): void {
  if (asking ? asking.project === project : useOrderRoom.getState().worked?.of === project) return;
  if (asking && performance.now() - asking.since > patienceMs) drop();
  asking = { number: ++lastNumber, project, since: performance.now() };
  useOrderRoom.setState({ busy: true, failed: null });
  post({ type: 'order', number: asking.number, things: thingsFor(project) });
}

/** The figures by which a plan is weighed; null where they can't be worked out. */
export function workOutFigures(project: Project): Promise<PlanFigures | null> {
  const number = ++lastNumber;
  const figures = new Promise<PlanFigures | null>((resolve) => waiting.set(number, resolve));
  post({ type: 'figures', number, things: thingsFor(project) });
  return figures;
}

/** What is counted or priced; photos and the like stay behind. */
function thingsFor(project: Project): Thing[] {
  return kindsIn('counted').flatMap((kind) => [...project[kind].values()]);
}

function post(message: ToOrderRoom): void {
  if (!worker) {
    worker = new Worker(new URL('./order.worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<FromOrderRoom>) => hear(data));
    worker.addEventListener('error', (event) => fail(event.message || 'its script could not be loaded'));
    worker.addEventListener('messageerror', () => fail('the answer could not be read'));
  }
  worker.postMessage(message);
}

function hear(message: FromOrderRoom): void {
  if (message.type === 'figures') {
    waiting.get(message.number)?.(message.figures);
    waiting.delete(message.number);
    return;
  }
  if (message.number !== asking?.number) return;
  const of = asking.project;
  asking = null;
  if (message.type === 'failed') useOrderRoom.setState({ busy: false, failed: message.message });
  else useOrderRoom.setState({ busy: false, worked: { of, takeOff: message.takeOff, order: message.order } });
}

/** The worker itself broke: whoever waits is told, and the next question starts another. */
function fail(message: string): void {
  drop();
  asking = null;
  useOrderRoom.setState({ busy: false, failed: message });
}

function drop(): void {
  worker?.terminate();
  worker = null;
  for (const give of waiting.values()) give(null);
  waiting.clear();
}
