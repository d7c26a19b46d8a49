import { boxAround, growBox } from '../../geometry/box.ts';
import { boxTree } from '../../geometry/boxTree.ts';
import { polylineGap } from '../../geometry/polyline.ts';
import { xyDistanceM } from '../../geometry/vector.ts';
import { refTo } from '../../model/refTo.ts';
import type { CrossingFigures } from '../../shapes/types.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { assumption, finding } from '../support/make.ts';

/** Nearer than this the digger cuts one pipe while laying the other; an assumption of this project. */
const clearanceM = 0.3;

/** Two trenches that cross or run too close to each other. */
export const trenchNearTrench: Check = ({ survey }) => {
  const trenches = [...survey.crossings.values()].filter(({ crossing, path }) => isBuried(crossing) && path.length > 1);
  const boxes = trenches.map(({ path }) => boxAround(path)!);
  const tree = boxTree(boxes.length, (add) => {
    for (const box of boxes) add(...box);
  });
  return trenches.flatMap((trench, i) => {
    const near = tree.search(growBox(boxes[i]!, clearanceM));
    return near.filter((j) => j > i).flatMap((j) => tooNear(trench, trenches[j]!) ?? []);
  });

  function tooNear(a: CrossingFigures, b: CrossingFigures) {
    const gap = polylineGap(a.path, b.path);
    // Two gateways may share a post, and their risers stand side by side on it.
    if (!gap || gap.distanceM >= clearanceM || sharePost(a, b)) return null;
    return finding('trenchNearTrench', 'warning', [a.crossing.id, b.crossing.id], {
      message: message('checks.trenchNearTrench.message', {
        one: refTo(a.gateway),
        other: refTo(b.gateway),
        gapM: gap.distanceM < 0.005 ? null : gap.distanceM,
        leastM: clearanceM,
      }),
      remedy: message('checks.trenchNearTrench.remedy'),
      source: assumption,
      at: survey.plane.toLonLat(gap.onFirst),
    });
  }
};

function isBuried({ method }: CrossingFigures['crossing']): boolean {
  return method === 'buried';
}

function sharePost(a: CrossingFigures, b: CrossingFigures): boolean {
  const ends = [b.path[0]!, b.path.at(-1)!];
  return [a.path[0]!, a.path.at(-1)!].some((p) => ends.some((q) => xyDistanceM(p, q) < 0.3));
}
