import { pointAtStation } from '../../geometry/plane/pointAtStation.ts';
import type { Xy } from '../../geometry/types.ts';
import type { CrossingAsBuilt } from '../../locate/crossingAsBuilt.ts';
import type { SolvedPoint } from '../../locate/ties.ts';

/** A point of a crossing as its card shows it. */
export interface CardPoint {
  /** A, B, C, ... in the plan, the section and the tables. */
  readonly letter: string;
  readonly label: string;
  readonly xy: Xy;
  /** Null where nothing was measured: it is only drawn. */
  readonly solved: SolvedPoint | null;
}

/** The two riser feet, measured or drawn, and every other measured point, in order along the trench. */
export function cardPoints(built: CrossingAsBuilt): CardPoint[] {
  const placed = (role: string) => built.points.find(({ point, xy }) => point.role === role && xy !== null) ?? null;
  const between = built.points.filter(
    ({ point, xy }) => xy !== null && point.role !== 'startFoot' && point.role !== 'endFoot',
  );
  const all = [
    { label: 'riser foot, start post', xy: built.startFoot, solved: placed('startFoot') },
    ...between.map((solved) => ({ label: solved.label, xy: solved.xy!, solved })),
    { label: 'riser foot, end post', xy: built.endFoot, solved: placed('endFoot') },
  ];
  return all.map((point, i) => ({ ...point, letter: letterOf(i) }));
}

function letterOf(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${letter}${Math.floor(index / 26)}`;
}

/** Where a crossing is said to be: half way along its trench. */
export function middleOfTrench({ path, lengthM }: CrossingAsBuilt): Xy {
  return pointAtStation(path, lengthM / 2).point;
}
