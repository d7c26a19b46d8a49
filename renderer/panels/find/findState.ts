import { create } from 'zustand';
import type { Dig } from '../../../core/locate/digCheck.ts';
import type { DrawnDig } from '../../map/findTypes.ts';

export type FindView = 'crossings' | 'dig' | 'fault' | 'along';

interface FindState {
  readonly view: FindView;
  /** Of the crossing looked for, the point that the sketch leads to; null: all of them. */
  readonly pointKey: string | null;
  /** Where somebody will dig; null: not said yet. Nothing of it is in the file. */
  readonly dig: Dig | null;
}

export const useFind = create<FindState>(() => ({ view: 'crossings', pointKey: null, dig: null }));

/** Assumptions, common practice: by eye on the map, and by the receiver of a phone under open sky. */
export const digErrorM = { drawn: 1, typed: 5 } as const;
const usualWithinM = 10;

/** A dig that was drawn on the map, or typed. */
export function setDig(drawn: DrawnDig, errorM: number = digErrorM.drawn): void {
  useFind.setState(({ dig }) => ({
    view: 'dig',
    dig: { ...drawn, errorM, withinM: dig?.withinM ?? usualWithinM },
  }));
}
