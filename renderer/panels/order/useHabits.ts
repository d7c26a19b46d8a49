import { propertyOf } from '../../../core/model/project.ts';
import type { OrderHabits } from '../../../core/quantities/formatOrder.ts';
import { orderSettingsOf } from '../../../core/quantities/takeOff.ts';
import { useOpenFile } from '../../state/appState.ts';

/** How the figures of the order are written here: in the property's units and currency. */
export function useHabits(): OrderHabits {
  const { project } = useOpenFile();
  const { currency } = orderSettingsOf(project);
  return { units: propertyOf(project).units, currency };
}
