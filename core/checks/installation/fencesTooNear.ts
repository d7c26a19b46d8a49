import { polylineGap } from '../../geometry/polyline.ts';
import type { Xy } from '../../geometry/types.ts';
import { keptForPair } from '../../model/memo.ts';
import { refTo } from '../../model/refTo.ts';
import type { Run } from '../../network/types.ts';
import type { LineShape } from '../../shapes/types.ts';
import { leastFenceGapM } from '../../survey/power/problems.ts';
import { message } from '../../words/message.ts';
import type { Check, CheckContext } from '../support/context.ts';
import { finding, standard } from '../support/make.ts';
import { segmentBox, segmentsNear } from '../support/segmentIndex.ts';

/** Fences of two separately timed energisers that a person or an animal could touch both of. */
export const fencesTooNear: Check = (context) => {
  const { survey, wires } = context;
  const energised = energisedParts(context);
  if (energised.size < 2) return [];
  const nearest = new Map<string, { a: LineShape; b: LineShape; gapM: number; xy: Xy }>();
  for (const [{ shape: a }, { shape: b }] of wires.pairs(leastFenceGapM)) {
    if (!a || !b) continue;
    for (const { segmentA, segmentB, gapM, xy } of closeSegments(a.xy, b.xy, leastFenceGapM)) {
      const [partA, partB] = [partOf(context, a, segmentA), partOf(context, b, segmentB)];
      if (partA === partB || !energised.has(partA) || !energised.has(partB)) continue;
      const pair = `${a.line.id} ${b.line.id}`;
      if (gapM < (nearest.get(pair)?.gapM ?? Infinity)) nearest.set(pair, { a, b, gapM, xy });
    }
  }
  return [...nearest.values()].map(({ a, b, gapM, xy }) =>
    finding('fencesTooNear', 'error', [a.line.id, b.line.id], {
      message: message('checks.fencesTooNear.message', {
        thing: refTo(a.line),
        other: refTo(b.line),
        gapM,
        leastM: leastFenceGapM,
      }),
      remedy: message('checks.fencesTooNear.remedy'),
      source: standard,
      at: survey.plane.toLonLat(xy),
    }),
  );
};

/** Numbers of the parts of the network that have an energiser of their own. */
function energisedParts({ survey, components }: CheckContext): Set<number> {
  return new Set(survey.network.sources.flatMap(({ node }) => (node === null ? [] : [components.allClosed[node]!])));
}

/** The part of the network that a segment belongs to, told by the run under its middle; -1: none. */
function partOf({ survey, components }: CheckContext, { stationsM, line }: LineShape, segment: number): number {
  const middleM = (stationsM[segment]! + stationsM[segment + 1]!) / 2;
  const runs = (survey.network.runsOfLine.get(line.id) ?? []).map((index) => survey.network.edges[index] as Run);
  const run = runs.find(({ fromM, toM }) => middleM >= fromM && middleM <= toM) ?? runs[0];
  return run ? components.allClosed[run.from]! : -1;
}

interface CloseSegments {
  readonly segmentA: number;
  readonly segmentB: number;
  readonly gapM: number;
  readonly xy: Xy;
}

const closeSegments = keptForPair((a: readonly Xy[], b: readonly Xy[], withinM: number): readonly CloseSegments[] => {
  const close: CloseSegments[] = [];
  for (let segmentA = 0; segmentA + 1 < a.length; segmentA++) {
    const one = a.slice(segmentA, segmentA + 2);
    for (const segmentB of segmentsNear(b, segmentBox(one[0]!, one[1]!, withinM))) {
      const other = b.slice(segmentB, segmentB + 2);
      const gap = polylineGap(one, other)!;
      if (gap.distanceM < withinM) close.push({ segmentA, segmentB, gapM: gap.distanceM, xy: gap.onFirst });
    }
  }
  return close;
});
