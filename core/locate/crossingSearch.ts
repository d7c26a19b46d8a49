import type { Xy } from '../geometry/types.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import type { Project } from '../model/project.ts';
import type { Survey } from '../survey/types.ts';
import { byName } from '../words/text.ts';
import { allCrossings } from './allCrossings.ts';
import type { CrossingAsBuilt } from './crossingAsBuilt.ts';

/** A row of the register of crossings that are in the ground or planned to be. */
export interface CrossingRow {
  readonly gatewayId: string;
  readonly name: string;
  readonly line: string;
  readonly crossing: CrossingAsBuilt;
}

/** Every buried crossing, by the name of its gateway. */
export function crossingRows(project: Project, survey: Survey): CrossingRow[] {
  return [...allCrossings(project, survey)]
    .map(([gatewayId, crossing]): CrossingRow => {
      const { gateway } = crossing.figures;
      const line = project.fenceLine.get(gateway.lineId)?.name ?? '';
      return { gatewayId, name: gateway.name, line, crossing };
    })
    .sort(byName);
}

/** Those whose gateway's name, line or note holds the words: the same name first, then names that begin with them. */
export function crossingsCalled(rows: readonly CrossingRow[], words: string): CrossingRow[] {
  const wanted = plain(words);
  if (wanted === '') return [...rows];
  const rank = ({ name, line, crossing }: CrossingRow): number => {
    const own = plain(name);
    if (own === wanted) return 0;
    if (own.startsWith(wanted)) return 1;
    if (own.includes(wanted)) return 2;
    return [line, crossing.figures.gateway.note, crossing.record?.note ?? ''].some((text) =>
      plain(text).includes(wanted),
    )
      ? 3
      : 4;
  };
  return rows
    .map((row) => ({ row, rank: rank(row) }))
    .filter((found) => found.rank < 4)
    .sort((p, q) => p.rank - q.rank)
    .map(({ row }) => row);
}

/** Nearest first, with how far off the middle of each gateway is, metres. */
export function crossingsNear(
  rows: readonly CrossingRow[],
  place: Xy,
): { readonly row: CrossingRow; readonly distanceM: number }[] {
  return rows
    .map((row) => ({ row, distanceM: xyDistanceM(row.crossing.shape.centre, place) }))
    .sort((p, q) => p.distanceM - q.distanceM);
}

/** Without case and accents. */
function plain(text: string): string {
  return text.trim().normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}
