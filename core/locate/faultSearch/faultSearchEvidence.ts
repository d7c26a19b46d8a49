import type { FaultSearch, FaultSearchReading } from '../../model/faultSearchThings.ts';
import { type FaultSearchGround, livePieces } from './faultSearchGround.ts';

/** A reading that counts, and what it says of the pieces. */
export interface Evidence {
  /** Position in the search's readings. */
  readonly index: number;
  readonly reading: FaultSearchReading;
  readonly live: ReadonlySet<number>;
}

/** The readings that were not set aside. Switches that are gone from the drawing count as closed. */
export function evidenceOf(search: FaultSearch, ground: FaultSearchGround): Evidence[] {
  return search.readings.flatMap((reading, index): Evidence[] => {
    if (reading.setAside) return [];
    return [{ index, reading, live: livePieces(ground, new Set([...search.openedFirst, ...reading.openIds])) }];
  });
}

/** Where a single fault can be by these readings: in what was live at each low one, and not at any good one. */
export function inQuestion(ground: FaultSearchGround, evidence: readonly Evidence[], flipped = -1): Set<number> {
  const left = new Set(ground.pieces.keys());
  for (const { index, reading, live } of evidence) {
    const low = (reading.result === 'low') !== (index === flipped);
    for (const piece of left) if (live.has(piece) !== low) left.delete(piece);
  }
  return left;
}

/**
 * Readings that can't all be right: those that, if one alone was wrong, would make the rest agree. The likeliest to be
 * wrong comes first: a doubtful one, then the one that stands nearest to the limits, then the later one.
 */
export function suspectReadings(
  search: FaultSearch,
  ground: FaultSearchGround,
  evidence: readonly Evidence[],
): Evidence[] {
  return evidence
    .filter(({ index, reading }) => reading.check !== 'start' && inQuestion(ground, evidence, index).size > 0)
    .sort((p, q) => {
      const [x, y] = [p.reading, q.reading];
      if (x.doubtful !== y.doubtful) return x.doubtful ? -1 : 1;
      return sureness(search, x) - sureness(search, y) || q.index - p.index;
    });
}

/** How far a reading stands off its limits, as a share of them; told without a figure it counts as just clear. */
function sureness(search: FaultSearch, { voltageV, result, yardstick }: FaultSearchReading): number {
  const { lowBelowV, goodFromV } = yardstick ?? search;
  if (voltageV === null) return 0.25;
  const offV = result === 'low' ? lowBelowV - voltageV : voltageV - goodFromV;
  return Math.min(0.25, Math.max(0, offV / Math.max(1, goodFromV)));
}
