import { figures } from '../../../core/words/figures.ts';
import type { Message } from '../../../core/words/message.ts';

/** A place that the pointer is drawn to, in words. It holds names and no measures, so that units do not matter. */
export function spotText(spot: Message): string {
  return figures('metric').say(spot);
}
