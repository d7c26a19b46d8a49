import { message } from '../../../core/words/message.ts';
import { faultText } from '../../state/report.ts';
import { callWorker, Ended } from '../callWorker.ts';
import type { ElevationFunctions } from './elevation.worker.ts';
import type { ElevationRead, ElevationRequest } from './messages.ts';

/** Reads an elevation model beside the window; null: `signal` stopped it. */
export async function elevation(request: ElevationRequest, signal: AbortSignal): Promise<ElevationRead | null> {
  const worker = new Worker(new URL('./elevation.worker.ts', import.meta.url), { type: 'module' });
  const room = callWorker<ElevationFunctions>(worker);
  signal.addEventListener('abort', room.end);
  try {
    return await room.ask<ElevationRead>(({ read }) => read(request));
  } catch (error) {
    if (error instanceof Ended) return null;
    return { ok: false, message: message('exchange.heights.failed', { fault: faultText(error) }), askSystem: null };
  } finally {
    room.end();
  }
}
