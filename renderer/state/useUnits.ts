import { propertyOf } from '../../core/model/project.ts';
import type { Units } from '../../core/words/numbers/write.ts';
import { useApp } from './appState.ts';

/** The units that the open property is shown in. */
export function useUnits(): Units {
  return useApp((state) => (state.file ? propertyOf(state.file.project).units : 'metric'));
}
