import type { Units } from '../../core/model/formatUnits.ts';
import { propertyOf } from '../../core/model/project.ts';
import { useApp } from './appState.ts';

/** The units that the open property is shown in. */
export function useUnits(): Units {
  return useApp((state) => (state.file ? propertyOf(state.file.project).units : 'metric'));
}
