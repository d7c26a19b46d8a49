import { pointAtStation } from '../../geometry/polyline.ts';
import type { Xy } from '../../geometry/types.ts';
import type { CrossingAsBuilt } from '../../locate/crossingAsBuilt.ts';
import { footLabel, type SolvedPoint } from '../../locate/ties.ts';
import { placeMarks } from '../../locate/tieWords.ts';
import type { Figures } from '../../words/types.ts';

/** A point of a crossing as its card shows it. */
export interface CardPoint {
  /** A, B, C, ... in the plan, the section and the tables. */
  readonly letter: string;
  readonly label: string;
  /** Every place where it can be; none where its tapes do not meet. */
  readonly places: readonly CardPlace[];
  /** Null where nothing was measured: it is only drawn. */
  readonly solved: SolvedPoint | null;
}

export interface CardPlace {
  /** The point's letter; where it can be in several places "A north", "A south". */
  readonly name: string;
  readonly xy: Xy;
  /** Within this, 19 times in 20; null where it is only drawn. */
  readonly withinM: number | null;
}

/** The two riser feet, measured or drawn, and every other point that was measured, in order along the trench. */
export function cardPoints(built: CrossingAsBuilt, f: Figures): CardPoint[] {
  const { points, shape, startFoot, endFoot } = built;
  const measured = points.filter(({ basis }) => basis !== 'none');
  const feet = (role: 'startFoot' | 'endFoot') => measured.find(({ point }) => point.role === role) ?? null;
  const between = measured.filter(({ point }) => point.role !== 'startFoot' && point.role !== 'endFoot');
  const all = [
    { label: footLabel(shape, 'start'), drawn: startFoot, solved: feet('startFoot') },
    ...between.map((solved) => ({ label: solved.label, drawn: null, solved })),
    { label: footLabel(shape, 'end'), drawn: endFoot, solved: feet('endFoot') },
  ];
  return all.map(({ label, drawn, solved }, i): CardPoint => {
    const letter = letterOf(i);
    const names = placeMarks(solved?.places ?? []).map(f.say);
    const named = (k: number) => (names.length > 1 ? f.words.sheets.stake.mark({ letter, place: names[k]! }) : letter);
    const places = solved
      ? solved.places.map(({ xy, withinM }, k): CardPlace => ({ name: named(k), xy, withinM }))
      : [{ name: letter, xy: drawn!, withinM: null }];
    return { letter, label: f.say(label), places, solved };
  });
}

function letterOf(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${letter}${Math.floor(index / 26)}`;
}

/**
 * Where a crossing is said to be: half way along its trench; at the middle of its gateway where the trench may lie in
 * several places.
 */
export function middleOfTrench({ path, lengthM, courses, shape }: CrossingAsBuilt): Xy {
  return courses.length > 1 ? shape.centre : pointAtStation(path, lengthM / 2).point;
}
