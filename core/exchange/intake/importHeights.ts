import { type HeightWay, mostWayPositions } from '../../model/groundThings.ts';
import { put } from '../../model/project.ts';
import type { LonLat } from '../../model/things.ts';
import { plainWords } from '../../words/figures.ts';
import { message } from '../../words/message.ts';
import type { PreviewFeature } from '../preview/types.ts';
import type { ImportChoices } from './importFeatures.ts';
import type { Intake } from './intake.ts';

/** Keeps the heights that came with the lines of a file, under the file's name. */
export function importHeights(
  intake: Intake,
  features: readonly PreviewFeature[],
  { keepHeights, fileName }: ImportChoices,
): void {
  const wanted = features.filter(
    (feature) => feature.shape !== 'point' && (keepHeights || intake.become(feature) === 'heights'),
  );
  for (const byReceiver of [true, false]) {
    const ways = wanted.filter(({ track }) => track === byReceiver).flatMap(wayOf);
    if (ways.length === 0) continue;
    const positions = ways.reduce((sum, { path }) => sum + path.length, 0);
    if (positions > mostWayPositions) {
      const counts = { heights: positions, most: mostWayPositions };
      intake.notes.push(message('exchange.intake.tooManyHeights', counts));
      continue;
    }
    const id = intake.newId('ground');
    const words = plainWords().exchange.heights;
    const name = fileName === '' ? words.imported : words.named({ file: fileName.slice(0, 150) });
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

/** Most positions that one way may have in a property file. */
const longestWay = 50_000;

/** The positions whose height is known, in several ways where they are too many for one; none where fewer than two are. */
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
  const ways: HeightWay[] = [];
  // Each begins where the one before it ends, so that no stretch between two positions is lost.
  for (let from = 0; from < kept.length - 1; from += longestWay - 1) {
    ways.push({ path: kept.slice(from, from + longestWay), heightsM: keptM.slice(from, from + longestWay) });
  }
  return ways;
}
