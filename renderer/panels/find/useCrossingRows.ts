import { useMemo } from 'react';
import { type CrossingRow, crossingRows } from '../../../core/locate/crossingSearch.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';

/** Every buried crossing, with how surely it is known. */
export function useCrossingRows(): readonly CrossingRow[] {
  const { project, survey } = useOpenFile();
  return useMemo(() => crossingRows(project, survey), [project, survey]);
}

/** The chosen thing's crossing: of a gateway, or of the crossing itself. */
export function useSoughtGateway(): string | null {
  const { survey } = useOpenFile();
  const chosen = useApp((state) => state.chosen);
  return useMemo(() => {
    for (const id of chosen) {
      if (survey.crossings.has(id)) return id;
      for (const [gatewayId, { crossing }] of survey.crossings) if (crossing.id === id) return gatewayId;
    }
    return null;
  }, [survey, chosen]);
}
