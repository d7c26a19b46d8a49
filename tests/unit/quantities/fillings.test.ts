import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestPatterns } from '../../../core/quantities/cutting/bestPattern.ts';
import { cannotHold } from '../../../core/quantities/cutting/cannotHold.ts';
import { dive } from '../../../core/quantities/cutting/dive.ts';
import { fillExactly } from '../../../core/quantities/cutting/fillExactly.ts';
import { type Filling, fillGreedily } from '../../../core/quantities/cutting/fillGreedily.ts';
import { fractionalCuts } from '../../../core/quantities/cutting/fractionalCuts.ts';
import { ReachableSums } from '../../../core/quantities/cutting/reachableSums.ts';
import { stockOf } from '../../../core/quantities/cutting/stock.ts';

const enough = () => ({ left: 10_000_000 });

/** Tries every way to put pieces into rolls, one after another. */
function canHold(pieces: readonly number[], rolls: readonly number[]): boolean {
  const left = [...rolls];
  const put = (piece: number): boolean => {
    if (piece === pieces.length) return true;
    for (let roll = 0; roll < left.length; roll++) {
      if (left[roll]! < pieces[piece]!) continue;
      left[roll]! -= pieces[piece]!;
      if (put(piece + 1)) return true;
      left[roll]! += pieces[piece]!;
    }
    return false;
  };
  return put(0);
}

function expectFits(filling: Filling, pieces: readonly number[], rolls: readonly number[]): void {
  const { lengths, counts } = stockOf(pieces);
  for (const [type, count] of counts.entries()) {
    expect(filling.reduce((sum, roll) => sum + roll[type]!, 0)).toBe(count);
  }
  for (const [roll, into] of filling.entries()) {
    expect(into.reduce((sum, count, type) => sum + count * lengths[type]!, 0)).toBeLessThanOrEqual(rolls[roll]!);
  }
}

/** Tight on purpose: about as much to cut as there is to cut from. */
const tight = fc.record({
  pieces: fc.array(fc.integer({ min: 3, max: 14 }), { minLength: 2, maxLength: 8 }),
  rolls: fc.array(fc.integer({ min: 10, max: 28 }), { minLength: 1, maxLength: 4 }),
});

describe('whether rolls hold all pieces, against trying every way', () => {
  it('is answered exactly by the search', () => {
    fc.assert(
      fc.property(tight, ({ pieces, rolls }) => {
        const found = fillExactly(stockOf(pieces), rolls, enough());
        expect(found === 'impossible').toBe(!canHold(pieces, rolls));
        if (typeof found !== 'string') expectFits(found, pieces, rolls);
      }),
      { seed: 21, numRuns: 2000 },
    );
  });

  it('is never denied wrongly by the bounds', () => {
    let denied = 0;
    fc.assert(
      fc.property(tight, ({ pieces, rolls }) => {
        const stock = stockOf(pieces);
        const possible = canHold(pieces, rolls);
        if (cannotHold(stock, rolls)) expect(possible).toBe(false);
        if (fractionalCuts(stock, rolls, enough()) === 'impossible') {
          denied++;
          expect(possible).toBe(false);
        }
      }),
      { seed: 22, numRuns: 2000 },
    );
    expect(denied).toBeGreaterThan(100);
  });

  it('is never claimed wrongly by what fills greedily or dives', () => {
    fc.assert(
      fc.property(tight, ({ pieces, rolls }) => {
        const stock = stockOf(pieces);
        const greedy = fillGreedily(stock, rolls, enough());
        if (greedy) expectFits(greedy, pieces, rolls);
        const dived = dive(stock, rolls, enough());
        if (dived === 'impossible') expect(canHold(pieces, rolls)).toBe(false);
        else if (dived !== 'unknown') expectFits(dived, pieces, rolls);
      }),
      { seed: 23, numRuns: 1000 },
    );
  });
});

describe('fractional cuts', () => {
  it('use each length as often as there are pieces of it, and no more rolls than there are', () => {
    fc.assert(
      fc.property(tight, ({ pieces, rolls }) => {
        const stock = stockOf(pieces);
        const cuts = fractionalCuts(stock, rolls, enough());
        if (typeof cuts === 'string') return;
        for (const [type, count] of stock.counts.entries()) {
          const cut = cuts.reduce((sum, { counts, times }) => sum + counts[type]! * times, 0);
          expect(cut).toBeGreaterThan(count - 1e-3);
        }
        for (const size of new Set(rolls)) {
          const used = cuts.filter(({ roll }) => roll === size).reduce((sum, { times }) => sum + times, 0);
          expect(used).toBeLessThan(rolls.filter((roll) => roll === size).length + 1e-6);
        }
      }),
      { seed: 24, numRuns: 500 },
    );
  });
});

describe('sums and patterns', () => {
  it('are the same as by trying every way', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 1, max: 70 }),
        ([...pieces], room) => {
          const stock = stockOf(pieces);
          const worths = stock.lengths.map((length, type) => length * 10 + type);
          let sums = new Set([0]);
          let best = 0;
          const ways = 2 ** pieces.length;
          for (let way = 0; way < ways; way++) {
            const chosen = pieces.filter((_, i) => (way >> i) & 1);
            const sum = chosen.reduce((total, piece) => total + piece, 0);
            if (sum > room) continue;
            sums = sums.add(sum);
            best = Math.max(
              best,
              chosen.reduce((total, piece) => total + worths[stock.lengths.indexOf(piece)]!, 0),
            );
          }
          const reachable = new ReachableSums(stock.lengths, stock.counts, room, enough());
          expect(reachable.largest(0, 0, room)).toBe(Math.max(...sums));
          for (let sum = 0; sum <= room; sum++) expect(reachable.largest(0, sum, sum)).toBe(sums.has(sum) ? sum : -1);
          const patterns = bestPatterns(stock, worths, room, enough());
          expect(patterns.worth(room)).toBe(best);
          const pattern = patterns.pattern(room);
          expect(pattern.reduce((sum, count, type) => sum + count * worths[type]!, 0)).toBe(best);
          expect(pattern.every((count, type) => count <= stock.counts[type]!)).toBe(true);
        },
      ),
      { seed: 25, numRuns: 500 },
    );
  });
});
