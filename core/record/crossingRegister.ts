import { allCrossings } from '../locate/allCrossings.ts';
import type { Basis } from '../locate/certainty.ts';
import type { CrossingAsBuilt } from '../locate/crossingAsBuilt.ts';
import { footLabel, type SolvedPoint } from '../locate/ties.ts';
import type { Project } from '../model/project.ts';
import type { Survey } from '../survey/types.ts';
import { figures as figuresIn } from '../words/figures.ts';
import { counted } from '../words/text.ts';

/** A crossing, in the ground or planned, and what its record still lacks. */
export interface CrossingRow {
  readonly built: CrossingAsBuilt;
  readonly photos: number;
  /** Ends and bend that ties fix in one place. */
  readonly tied: number;
  /** What nobody will know once the trench is closed, in words; empty: nothing is missing. */
  readonly lacks: readonly string[];
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

function lacksOf({ record, points, figures, shape }: CrossingAsBuilt, photos: number): string[] {
  const fixed = (role: string) => points.some(({ point, places }) => point.role === role && places.length > 0);
  const bent = !figures.bowAssumed || fixed('bend') || (record?.route === 'points' && fixed('point'));
  const astray = (role: string) => points.some(({ point, basis }) => point.role === role && basis === 'contradictory');
  return [
    listed('which side', points, 'ambiguous'),
    listed('ties that meet', points, 'contradictory'),
    fixed('startFoot') || astray('startFoot')
      ? ''
      : `ties of the ${figuresIn('metric').say(footLabel(shape, 'start'))}`,
    fixed('endFoot') || astray('endFoot') ? '' : `ties of the ${figuresIn('metric').say(footLabel(shape, 'end'))}`,
    bent || astray('bend') ? '' : 'the bend',
    record && record.depths.length > 0 ? '' : 'depths',
    record && record.jointsUnderground !== null ? '' : 'joints underground',
    figures.crossing.sealed === null ? 'seals' : '',
    photos > 0 ? '' : 'a photo',
    record?.recordedBy ? '' : 'who recorded it',
  ].filter((word) => word !== '');
}

/** "which side (bend, west riser foot)"; empty where it is true of none. */
function listed(what: string, points: readonly SolvedPoint[], basis: SolvedPoint['basis']): string {
  const labels = points.filter((point) => point.basis === basis).map(({ label }) => figuresIn('metric').say(label));
  return labels.length === 0 ? '' : `${what} (${labels.join(', ')})`;
}

/** "9 of 23 crossings in the ground recorded; 14 can't be found by tape yet; 1 with the side not said; 5 planned". */
export function recordSentence(rows: readonly CrossingRow[], builtOtherwise: number): string {
  if (rows.length === 0) return 'No buried crossing is drawn, so there is none to record.';
  const buried = rows.filter(({ built }) => built.inGround);
  const begun = buried.filter(({ built }) => built.record !== null || built.points.length > 0);
  const untied = buried.filter(({ tied }) => tied < 2).length;
  const rated = (basis: Basis) => buried.filter(({ built }) => built.certainty.basis === basis).length;
  const [ambiguous, contradictory, planned] = [rated('ambiguous'), rated('contradictory'), rows.length - buried.length];
  const crossings = buried.length === 1 ? 'crossing' : 'crossings';
  const found = untied > 0 ? `${untied} can't be found by tape yet` : 'all can be found by tape';
  const parts = [
    ...(buried.length > 0
      ? [`${begun.length} of ${buried.length} ${crossings} in the ground recorded`, found]
      : ['No crossing in the ground yet']),
    ambiguous > 0 ? `${ambiguous} with the side not said` : '',
    contradictory > 0 ? `${contradictory} with tapes that do not meet` : '',
    planned > 0 ? `${planned} planned` : '',
    builtOtherwise > 0 ? `${counted(builtOtherwise, 'thing')} built otherwise than planned` : '',
  ];
  return `${parts.filter((part) => part !== '').join('; ')}.`;
}
