import { type HeightWay, mostWayPositions } from '../../model/groundThings.ts';
import { put } from '../../model/project.ts';
import type { LonLat } from '../../model/things.ts';
import type { ImportAs, PreviewFeature } from '../preview/types.ts';
import type { ImportChoices } from './importFeatures.ts';
import type { Intake } from './intake.ts';

/** Keeps the heights that came with the lines of a file, under the file's name. */
export function importHeights(
  intake: Intake,
  features: readonly PreviewFeature[],
  asOf: (feature: PreviewFeature) => ImportAs,
  { keepHeights, fileName }: ImportChoices,
): void {
  const wanted = features.filter(
    (feature) => feature.shape !== 'point' && (keepHeights || asOf(feature) === 'heights'),
  );
  for (const byReceiver of [true, false]) {
    const ways = wanted.filter(({ track }) => track === byReceiver).flatMap(wayOf);
    if (ways.length === 0) continue;
    const positions = ways.reduce((sum, { path }) => sum + path.length, 0);
    if (positions > mostWayPositions) {
      intake.notes.push(
        `Its heights were left out: ${positions} are more than a property can hold (${mostWayPositions}).`,
      );
      continue;
    }
    const id = intake.newId('ground');
    const name = fileName === '' ? 'Imported heights' : `Heights of ${fileName.slice(0, 150)}`;
    const heights = { as: 'along', ways, byReceiver } as const;
    intake.project = put(intake.project, {
      kind: 'ground',
      id,
      name,
      fileName: fileName.slice(0, 200),
      heights,
      note: '',
    });
    intake.added++;
  }
}

const longestWay = 50_000;

/** The positions whose height is known; none where fewer than two are. */
function wayOf({ path, heightsM }: PreviewFeature): HeightWay[] {
  if (!heightsM) return [];
  const kept: LonLat[] = [];
  const keptM: number[] = [];
  for (const [i, position] of path.entries()) {
    const heightM = heightsM[i];
    if (heightM === null || heightM === undefined) continue;
    kept.push(position);
    keptM.push(heightM);
  }
  if (kept.length < 2) return [];
  // Thinned where a way is longer than a file may hold; the ground does not change from step to step.
  const every = Math.ceil(kept.length / longestWay);
  const keep = (_: unknown, i: number) => i % every === 0 || i === kept.length - 1;
  return [{ path: kept.filter(keep), heightsM: keptM.filter(keep) }];
}
