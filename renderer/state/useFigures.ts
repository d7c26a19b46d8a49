import { figures } from '../../core/words/figures.ts';
import type { Figures } from '../../core/words/types.ts';
import { useUnits } from './useUnits.ts';

/** What messages are said with on the screen: the units of the open property, the active language. */
export function useFigures(): Figures {
  return figures(useUnits());
}
