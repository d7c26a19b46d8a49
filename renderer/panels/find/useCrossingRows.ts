import { useMemo } from 'react';
import { type CrossingRow, crossingRows } from '../../../core/locate/crossingSearch.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';

/** Every buried crossing, with how surely it is known. */
export function useCrossingRows(): readonly CrossingRow[] {
  const { project, survey } = useOpenFile();
  return useMemo(() => crossingRows(project, survey), [project, survey]);
}

/** What is looked for, of what is chosen: a gateway's id for its crossing, or the id of something left in the ground. */
export function useSought(): string | null {
  const { project, survey } = useOpenFile();
  const chosen = useApp((state) => state.chosen);
  return useMemo(() => {
    for (const id of chosen) {
      if (survey.crossings.has(id) || project.inGround.has(id)) return id;
      for (const [gatewayId, { crossing }] of survey.crossings) if (crossing.id === id) return gatewayId;
    }
    return null;
  }, [project, survey, chosen]);
}
