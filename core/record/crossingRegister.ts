import { allCrossings } from '../locate/allCrossings.ts';
import type { Basis } from '../locate/certainty.ts';
import type { CrossingAsBuilt } from '../locate/crossingAsBuilt.ts';
import { footLabel, type SolvedPoint } from '../locate/ties.ts';
import type { Project } from '../model/project.ts';
import type { LineEnd } from '../model/things.ts';
import type { Survey } from '../survey/types.ts';
import { type Message, message } from '../words/message.ts';

/** A crossing, in the ground or planned, and what its record still lacks. */
export interface CrossingRow {
  readonly built: CrossingAsBuilt;
  readonly photos: number;
  /** Ends and bend that ties fix in one place. */
  readonly tied: number;
  /** What nobody will know once the trench is closed, empty: nothing is missing. */
  readonly lacks: readonly Message[];
}

/** Every buried crossing in the order in which they were drawn. */
export function crossingRegister(project: Project, survey: Survey): CrossingRow[] {
  const photos = Map.groupBy(project.photo.values(), ({ of }) => of?.id ?? '');
  return [...allCrossings(project, survey).values()].map((built) => {
    const own = photos.get(built.figures.crossing.id)?.length ?? 0;
    const tied = built.points.filter(isTied).length;
    return { built, photos: own, tied, lacks: lacksOf(built, own) };
  });
}

function isTied({ by, basis, point }: SolvedPoint): boolean {
  return by === 'ties' && basis === 'measured' && point.role !== 'point';
}

function lacksOf({ record, points, figures, shape }: CrossingAsBuilt, photos: number): Message[] {
  const fixed = (role: string) => points.some(({ point, places }) => point.role === role && places.length > 0);
  const bent = !figures.bowAssumed || fixed('bend') || (record?.route === 'points' && fixed('point'));
  const astray = (role: string) => points.some(({ point, basis }) => point.role === role && basis === 'contradictory');
  const labels = (of: SolvedPoint['basis']) => points.filter(({ basis }) => basis === of).map(({ label }) => label);
  const [ambiguous, contradictory] = [labels('ambiguous'), labels('contradictory')];
  const tiesOf = (end: LineEnd) => message('record.lacks.ties', { point: footLabel(shape, end) });
  return [
    ambiguous.length > 0 ? message('record.lacks.side', { points: ambiguous }) : [],
    contradictory.length > 0 ? message('record.lacks.tiesThatMeet', { points: contradictory }) : [],
    fixed('startFoot') || astray('startFoot') ? [] : tiesOf('start'),
    fixed('endFoot') || astray('endFoot') ? [] : tiesOf('end'),
    bent || astray('bend') ? [] : message('record.lacks.bend'),
    record && record.depths.length > 0 ? [] : message('record.lacks.depths'),
    record && record.jointsUnderground !== null ? [] : message('record.lacks.joints'),
    figures.crossing.sealed === null ? message('record.lacks.seals') : [],
    photos > 0 ? [] : message('record.lacks.photo'),
    record?.recordedBy ? [] : message('record.lacks.recordedBy'),
  ].flat();
}

/** "9 of 23 crossings in the ground recorded; 14 can't be found by tape yet; 1 with the side not said; 5 planned". */
export function recordSentence(rows: readonly CrossingRow[], builtOtherwise: number): Message {
  if (rows.length === 0) return message('record.noCrossing');
  const buried = rows.filter(({ built }) => built.inGround);
  const rated = (basis: Basis) => buried.filter(({ built }) => built.certainty.basis === basis).length;
  return message('record.howFar', {
    buried: buried.length,
    begun: buried.filter(({ built }) => built.record !== null || built.points.length > 0).length,
    untied: buried.filter(({ tied }) => tied < 2).length,
    ambiguous: rated('ambiguous'),
    contradictory: rated('contradictory'),
    planned: rows.length - buried.length,
    builtOtherwise,
  });
}
