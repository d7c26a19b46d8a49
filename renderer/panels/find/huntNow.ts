import { useMemo } from 'react';
import { type HuntGround, huntGround } from '../../../core/locate/hunt/huntGround.ts';
import { type HuntWalk, walkHunt } from '../../../core/locate/hunt/huntWalk.ts';
import type { FaultHunt } from '../../../core/model/huntThings.ts';
import type { Survey } from '../../../core/survey/types.ts';
import { useOpenFile } from '../../state/appState.ts';

export interface HuntNow {
  readonly hunt: FaultHunt;
  /** Null where its energiser feeds no fence any more. */
  readonly ground: HuntGround | null;
  readonly walk: HuntWalk | null;
}

const grounds = new WeakMap<Survey, Map<string, HuntGround | null>>();

/** What an energiser feeds; the same value for the same survey. */
export function groundOf(survey: Survey, energiserId: string): HuntGround | null {
  const kept = grounds.get(survey) ?? new Map<string, HuntGround | null>();
  grounds.set(survey, kept);
  let ground = kept.get(energiserId);
  if (ground === undefined) {
    ground = huntGround(survey, energiserId);
    kept.set(energiserId, ground);
  }
  return ground;
}

/** The search that is under way, the latest of them; null: none. It is in the file, so that it outlives the window. */
export function useHuntNow(): HuntNow | null {
  const { project, survey } = useOpenFile();
  return useMemo(() => {
    const hunt = [...project.faultHunt.values()].findLast(({ end }) => end === null);
    if (!hunt) return null;
    const ground = groundOf(survey, hunt.energiserId);
    return { hunt, ground, walk: ground && walkHunt(hunt, ground) };
  }, [project.faultHunt, survey]);
}
