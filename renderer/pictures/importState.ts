import { create } from 'zustand';
import type { CoordinateSystem } from '../../core/coordinates/systems.ts';

/** The system that a picture's coordinates are in, or that it is to be laid by eye. */
export type SystemChoice = Extract<CoordinateSystem, { kind: 'projected' }> | 'eye';

export interface PictureImport {
  readonly fileName: string;
  readonly phase: 'reading' | 'asking' | 'cutting';
  readonly tilesDone: number;
  readonly tilesInAll: number;
  /** In which system the picture's coordinates are: why it is asked, and what takes the answer. */
  readonly question: { readonly why: string; readonly answer: (choice: SystemChoice) => void } | null;
  /** Gives the picture up; nothing of it stays. */
  readonly stop: () => void;
}

/** The picture that is being brought in, if any. */
export const usePictureImport = create<{ readonly current: PictureImport | null; readonly problem: string | null }>(
  () => ({ current: null, problem: null }),
);
