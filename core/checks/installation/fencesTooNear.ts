import { polylineGap } from '../../geometry/plane/polylineGap.ts';
import { called } from '../../model/edits/support/find.ts';
import type { Run } from '../../network/types.ts';
import type { LineShape } from '../../registers/types.ts';
import type { Check, CheckContext } from '../support/context.ts';
import { finding, headed, standard } from '../support/make.ts';
import type { WireSegment } from '../support/wireIndex.ts';

const leastGapM = 2.5;

/** Fences of two separately timed energisers that a person or an animal could touch both of. */
export const fencesTooNear: Check = (context) => {
  const { survey, wires, say } = context;
  const energised = energisedParts(context);
  if (energised.size < 2) return [];
  const nearest = new Map<string, { a: LineShape; b: LineShape; gapM: number; xy: readonly [number, number] }>();
  for (const [i, one] of wires.segments.entries()) {
    const part = partOf(context, one);
    if (part === null || !energised.has(part)) continue;
    const path = ends(one);
    for (const j of wires.search(boxOf(path), leastGapM)) {
      const other = wires.segments[j]!;
      if (j <= i) continue;
      const otherPart = partOf(context, other);
      if (otherPart === null || otherPart === part || !energised.has(otherPart)) continue;
      const gap = polylineGap(path, ends(other))!;
      const [a, b] = [one.wire.shape!, other.wire.shape!];
      const pair = `${a.line.id} ${b.line.id}`;
      if (gap.distanceM >= leastGapM || gap.distanceM >= (nearest.get(pair)?.gapM ?? Infinity)) continue;
      nearest.set(pair, { a, b, gapM: gap.distanceM, xy: gap.onFirst });
    }
  }
  return [...nearest.values()].map(({ a, b, gapM, xy }) =>
    finding('fencesTooNear', 'error', [a.line.id, b.line.id], {
      message: `${headed(a.line)} and ${called(b.line)} are on different energisers and come within ${say(gapM)} of each other; ${say(leastGapM)} is the least.`,
      remedy: 'Move one of them, or close the gap with non-conductive material or an isolated metal barrier.',
      source: standard,
      at: survey.plane.toLonLat(xy),
    }),
  );
};

/** Numbers of the parts of the network that have an energiser of their own. */
function energisedParts({ survey, components }: CheckContext): Set<number> {
  return new Set(survey.network.sources.flatMap(({ node }) => (node === null ? [] : [components.allClosed[node]!])));
}

/** The part of the network that a segment belongs to, told by the run under its middle. */
function partOf({ survey, components }: CheckContext, { wire, segment }: WireSegment): number | null {
  if (!wire.shape) return null;
  const { stationsM, line } = wire.shape;
  const middleM = (stationsM[segment]! + stationsM[segment + 1]!) / 2;
  const runs = (survey.network.runsOfLine.get(line.id) ?? []).map((index) => survey.network.edges[index] as Run);
  const run = runs.find(({ fromM, toM }) => middleM >= fromM && middleM <= toM) ?? runs[0];
  return run ? components.allClosed[run.from]! : null;
}

function ends({ wire, segment }: WireSegment) {
  return [wire.xy[segment]!, wire.xy[segment + 1]!] as const;
}

function boxOf([a, b]: ReturnType<typeof ends>) {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[0], b[0]), Math.max(a[1], b[1])] as const;
}
