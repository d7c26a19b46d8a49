import { type Project, propertyOf } from '../../core/model/project.ts';
import { figures } from '../../core/words/figures.ts';
import type { Texts } from '../../core/words/message.ts';
import type { Figures } from '../../core/words/types.ts';
import { useUnits } from './useUnits.ts';

/** What messages are said with on the screen: the units of the open property, the active language. */
export function useFigures(): Figures {
  return figures(useUnits());
}

/** All texts, in the units of the open property and the active language. */
export function useWords(): Texts {
  return useFigures().words;
}

/** The same of a property. */
export function figuresOf(project: Project): Figures {
  return figures(propertyOf(project).units);
}
