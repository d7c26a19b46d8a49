import { allCrossings } from '../../locate/allCrossings.ts';
import type { CrossingAsBuilt } from '../../locate/crossingAsBuilt.ts';
import type { Project } from '../../model/project.ts';
import type { Survey } from '../types.ts';

/** A buried crossing and what its record still lacks. */
export interface CrossingRow {
  readonly built: CrossingAsBuilt;
  readonly photos: number;
  /** Ends and bend that ties fix. */
  readonly tied: number;
  /** What nobody will know once the trench is closed, in words; empty: nothing is missing. */
  readonly lacks: readonly string[];
}

/** Every buried crossing in the order in which they were drawn. */
export function crossingRegister(project: Project, survey: Survey): CrossingRow[] {
  const photos = Map.groupBy(project.photo.values(), ({ of }) => of?.id ?? '');
  return [...allCrossings(project, survey).values()].map((built) => {
    const own = photos.get(built.figures.crossing.id)?.length ?? 0;
    const tied = built.points.filter(({ by, point }) => by === 'ties' && point.role !== 'point').length;
    return { built, photos: own, tied, lacks: lacksOf(built, own) };
  });
}

function lacksOf({ record, points, figures }: CrossingAsBuilt, photos: number): string[] {
  const fixed = (role: string) => points.some(({ point, xy }) => point.role === role && xy !== null);
  const bent = !figures.bowAssumed || fixed('bend') || (record?.route === 'points' && fixed('point'));
  return [
    fixed('startFoot') ? '' : 'ties of the start riser',
    fixed('endFoot') ? '' : 'ties of the end riser',
    bent ? '' : 'the bend',
    record && record.depths.length > 0 ? '' : 'depths',
    record && record.jointsUnderground !== null ? '' : 'joints underground',
    figures.crossing.sealed === null ? 'seals' : '',
    photos > 0 ? '' : 'a photo',
    record?.recordedBy ? '' : 'who recorded it',
  ].filter((word) => word !== '');
}

/** "23 of 31 crossings recorded, 4 lack ties; 2 changed from the plan". */
export function recordSentence(rows: readonly CrossingRow[], builtOtherwise: number): string {
  if (rows.length === 0) return 'No buried crossing is drawn, so there is none to record.';
  const begun = rows.filter(({ built }) => built.record !== null || built.points.length > 0);
  const untied = rows.filter(({ tied }) => tied < 2).length;
  const parts = [
    `${begun.length} of ${rows.length} ${rows.length === 1 ? 'crossing' : 'crossings'} recorded`,
    untied > 0 ? `${untied} can't be found by tape yet` : 'all can be found by tape',
    builtOtherwise > 0
      ? `${builtOtherwise} ${builtOtherwise === 1 ? 'thing' : 'things'} built otherwise than planned`
      : '',
  ];
  return `${parts.filter((part) => part !== '').join('; ')}.`;
}
