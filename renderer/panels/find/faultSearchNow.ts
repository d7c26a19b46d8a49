import { useMemo } from 'react';
import { type FaultSearchGround, faultSearchGround } from '../../../core/locate/faultSearch/faultSearchGround.ts';
import { type FaultSearchWalk, walkFaultSearch } from '../../../core/locate/faultSearch/faultSearchWalk.ts';
import type { FaultSearch } from '../../../core/model/faultSearchThings.ts';
import type { Survey } from '../../../core/survey/types.ts';
import { useOpenFile } from '../../state/appState.ts';

export interface FaultSearchNow {
  readonly search: FaultSearch;
  /** Null where its energiser feeds no fence any more. */
  readonly ground: FaultSearchGround | null;
  readonly walk: FaultSearchWalk | null;
}

const grounds = new WeakMap<Survey, Map<string, FaultSearchGround | null>>();

/** What an energiser feeds; the same value for the same survey. */
export function groundOf(survey: Survey, energiserId: string): FaultSearchGround | null {
  const kept = grounds.get(survey) ?? new Map<string, FaultSearchGround | null>();
  grounds.set(survey, kept);
  let ground = kept.get(energiserId);
  if (ground === undefined) {
    ground = faultSearchGround(survey, energiserId);
    kept.set(energiserId, ground);
  }
  return ground;
}

/** The search that is under way, the latest of them; null: none. It is in the file, so that it outlives the window. */
export function useFaultSearchNow(): FaultSearchNow | null {
  const { project, survey } = useOpenFile();
  return useMemo(() => {
    const search = [...project.faultHunt.values()].findLast(({ end }) => end === null);
    if (!search) return null;
    const ground = groundOf(survey, search.energiserId);
    return { search, ground, walk: ground && walkFaultSearch(search, ground) };
  }, [project.faultHunt, survey]);
}
