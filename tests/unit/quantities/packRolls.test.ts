import fc from 'fast-check';
import highsLoader from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { packRolls } from '../../../core/quantities/cutting/packRolls.ts';
import type { Packing, RollSize } from '../../../core/quantities/cutting/types.ts';
import { randomNumbers } from '../../support/random.ts';

const bought = (length: number): RollSize => ({ length, count: Infinity, bought: true });
const kept = (length: number, count = 1): RollSize => ({ length, count, bought: false });

function score(packing: Packing, sizes: readonly RollSize[]) {
  return {
    bought: packing.rolls.filter(({ size }) => sizes[size]!.bought).length,
    rolls: packing.rolls.length,
    length: packing.rolls.reduce((sum, { size }) => sum + sizes[size]!.length, 0),
  };
}

/** Every piece once, no roll too full, no size used more often than there is. */
function expectWhole(packing: Packing, pieces: readonly number[], sizes: readonly RollSize[]): void {
  const all = [...packing.rolls.flatMap((roll) => roll.pieces), ...packing.tooLong, ...packing.without];
  expect(all.sort((a, b) => a - b)).toEqual([...pieces.keys()]);
  for (const roll of packing.rolls) {
    const used = roll.pieces.reduce((sum, piece) => sum + pieces[piece]!, 0);
    expect(used).toBeLessThanOrEqual(sizes[roll.size]!.length);
  }
  for (const [size, { count }] of sizes.entries()) {
    expect(packing.rolls.filter((roll) => roll.size === size).length).toBeLessThanOrEqual(count);
  }
}

describe('cutting pieces from rolls', () => {
  it('opens the one roll that wastes least', () => {
    const sizes = [bought(50), bought(100), bought(200)];
    const packing = packRolls([30, 20, 40], sizes);
    expect(score(packing, sizes)).toEqual({ bought: 1, rolls: 1, length: 100 });
    expect(packing.optimal).toBe(true);
  });

  it('uses what is on hand before it buys', () => {
    const sizes = [kept(35), kept(45), bought(100)];
    expect(score(packRolls([30, 40], sizes), sizes)).toEqual({ bought: 0, rolls: 2, length: 80 });
  });

  it('names pieces that are longer than every roll, and cuts the others', () => {
    const packing = packRolls([120, 10], [bought(100)]);
    expect(packing.tooLong).toEqual([0]);
    expect(packing.rolls).toEqual([{ size: 0, pieces: [1] }]);
  });

  it('names pieces for which there is no roll left', () => {
    const packing = packRolls([60, 50, 40], [kept(100)]);
    expect(packing.without).toHaveLength(1);
    expect(packing.optimal).toBe(false);
    expectWhole(packing, [60, 50, 40], [kept(100)]);
  });

  it('has nothing to do without pieces', () => {
    expect(packRolls([], [bought(100)])).toEqual({
      rolls: [],
      tooLong: [],
      without: [],
      optimal: true,
      least: { bought: 0, rolls: 0 },
    });
  });

  it('finds the only way to fill rolls to the last bit', () => {
    // Cut up by hand, as it were: three pieces from each of eight rolls, and shuffled.
    const random = randomNumbers(5);
    const pieces = Array.from({ length: 8 }, () => {
      const first = 3800 + Math.floor(random() * 1100);
      const second = 2500 + Math.floor(random() * ((10_000 - first) / 2 - 2500));
      return [first, second, 10_000 - first - second];
    }).flat();
    const packing = packRolls(pieces, [bought(10_000)]);
    expect(packing.rolls).toHaveLength(8);
    expect(packing.optimal).toBe(true);
  });

  it('finds a filling that first-fit decreasing misses (worked by hand: 6+4, 6+4, 5+5 into tens)', () => {
    const pieces = [6, 6, 5, 5, 4, 4];
    expect(packRolls(pieces, [bought(10)]).rolls).toHaveLength(3);
  });

  it('proves that three pieces of over half a roll need three', () => {
    const packing = packRolls([51, 51, 51], [bought(100)]);
    expect(packing.rolls).toHaveLength(3);
    expect(packing.least).toEqual({ bought: 3, rolls: 3 });
  });

  it('says when its work ran out, and still cuts every piece', () => {
    const random = randomNumbers(3);
    const pieces = Array.from({ length: 60 }, () => 2000 + Math.floor(random() * 3000));
    const sizes = [bought(10_000)];
    const packing = packRolls(pieces, sizes, { total: 10, forOneSet: 5 });
    expectWhole(packing, pieces, sizes);
    expect(packing.least!.rolls).toBeLessThanOrEqual(packing.rolls.length);
  });
});

describe('against HiGHS, a solver of mixed-integer programs', () => {
  let highs: Awaited<ReturnType<typeof highsLoader>>;
  beforeAll(async () => {
    highs = await highsLoader();
  });

  /** Rolls x pieces of 0 or 1; the three aims as one weighted sum. */
  function best(pieces: readonly number[], sizes: readonly RollSize[]): number {
    const rolls = sizes.flatMap((size) => Array<RollSize>(Math.min(size.count, pieces.length)).fill(size));
    const cost = (roll: RollSize) => (roll.bought ? 1e6 : 0) + 1e4 + roll.length;
    const x = (piece: number, roll: number) => `x${piece}_${roll}`;
    const once = pieces.map((_, piece) => ` ${rolls.map((_, roll) => x(piece, roll)).join(' + ')} = 1`);
    const room = rolls.map(
      ({ length }, roll) =>
        ` ${pieces.map((need, piece) => `${need} ${x(piece, roll)}`).join(' + ')} - ${length} y${roll} <= 0`,
    );
    const binaries = rolls.flatMap((_, roll) => [`y${roll}`, ...pieces.map((_, piece) => x(piece, roll))]);
    const model = [
      'Minimize',
      ` ${rolls.map((roll, i) => `${cost(roll)} y${i}`).join(' + ')}`,
      'Subject To',
      ...once,
      ...room,
      'Binary',
      ` ${binaries.join(' ')}`,
      'End',
    ].join('\n');
    const solution = highs.solve(model, { mip_rel_gap: 0 });
    expect(solution.Status).toBe('Optimal');
    return Math.round(solution.ObjectiveValue);
  }

  it('buys, opens and wastes as little, in every small case', () => {
    const small = fc.record({
      pieces: fc.array(fc.integer({ min: 5, max: 60 }), { minLength: 1, maxLength: 8 }),
      onHand: fc.array(fc.integer({ min: 20, max: 90 }), { maxLength: 3 }),
      forSale: fc.subarray([60, 75, 100], { minLength: 1 }),
    });
    fc.assert(
      fc.property(small, ({ pieces, onHand, forSale }) => {
        const sizes = [...onHand.map((length) => kept(length)), ...forSale.map(bought)];
        const packing = packRolls(pieces, sizes);
        expectWhole(packing, pieces, sizes);
        expect(packing.optimal).toBe(true);
        const { bought: buys, rolls, length } = score(packing, sizes);
        expect(buys * 1e6 + rolls * 1e4 + length).toBe(best(pieces, sizes));
      }),
      { seed: 11, numRuns: 40 },
    );
  });
});

describe('crossings of a property', () => {
  // Pipes and cables of 4 to 14 m, to the centimetre, from rolls of 50, 100 and 200 m.
  const sizes = [5000, 10_000, 20_000].map(bought);
  const cuts = (count: number, seed: number) => {
    const random = randomNumbers(seed);
    return Array.from({ length: count }, () => 400 + Math.floor(random() * 1000));
  };

  it('are cut proven best up to 60 pieces', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const pieces = cuts(2 * seed, seed);
      const packing = packRolls(pieces, sizes);
      expectWhole(packing, pieces, sizes);
      expect(packing.optimal, `${pieces.length} pieces`).toBe(true);
    }
  });

  it('are cut within one roll of the least beyond', () => {
    for (const count of [100, 250, 600]) {
      const pieces = cuts(count, count);
      const packing = packRolls(pieces, sizes);
      expectWhole(packing, pieces, sizes);
      expect(packing.rolls.length).toBeLessThanOrEqual(packing.least!.rolls + 1);
      expect(packing.least!.rolls).toBeGreaterThanOrEqual(
        Math.ceil(pieces.reduce((sum, piece) => sum + piece, 0) / 20_000),
      );
    }
  });

  it('are cut proven best, or within one roll, where only two or three pieces fit a roll', () => {
    let proven = 0;
    const kinds = [
      { least: 1500, most: 4000, rolls: [5000, 10_000] },
      { least: 2500, most: 4900, rolls: [10_000] },
      { least: 1000, most: 9000, rolls: [10_000] },
    ];
    for (const [kind, { least, most, rolls }] of kinds.entries()) {
      for (let seed = 1; seed <= 3; seed++) {
        const random = randomNumbers(100 * kind + seed);
        const pieces = Array.from({ length: 40 }, () => least + Math.floor(random() * (most - least)));
        const packing = packRolls(pieces, rolls.map(bought));
        expectWhole(packing, pieces, rolls.map(bought));
        expect(packing.rolls.length).toBeLessThanOrEqual(packing.least!.rolls + 1);
        proven += Number(packing.optimal);
      }
    }
    expect(proven).toBeGreaterThanOrEqual(8);
  });

  it('use up part rolls', () => {
    const withParts = [kept(1830), kept(2260), kept(940), kept(5000, 2), ...sizes];
    for (let seed = 1; seed <= 10; seed++) {
      const pieces = cuts(20 + 3 * seed, 40 + seed);
      const packing = packRolls(pieces, withParts);
      expectWhole(packing, pieces, withParts);
      expect(packing.rolls.length).toBeLessThanOrEqual(packing.least!.rolls + 1);
    }
  });
});
