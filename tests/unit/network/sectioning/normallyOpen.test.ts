import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feedingWays } from '../../../../core/network/sectioning/index.ts';
import { anyNetwork, SEED } from './networks.ts';

describe('feedingWays', () => {
  it('feeds every section one way, by the shortest', () => {
    fc.assert(
      fc.property(anyNetwork({ runs: 16, extra: 10 }), ({ runs, candidates, source }) => {
        const { normallyOpen, feeds, unfed } = feedingWays(runs, candidates, source);
        expect(unfed).toEqual([]);
        // The closed switches make a tree over all sections.
        const open = new Set(normallyOpen);
        const closed = candidates.filter(({ id, a, b }) => a !== b && !open.has(id));
        expect(closed).toHaveLength(runs.length - 1);
        expect(closed.map(({ id }) => id).sort()).toEqual(feeds.flatMap(({ through }) => through ?? []).sort());
        // Shortest ways by relaxing every switch as often as there are sections (Bellman and Ford).
        const length = new Map(runs.map(({ id, lengthM }) => [id, lengthM]));
        const way = new Map(runs.map(({ id }) => [id, id === source ? length.get(id)! : Number.POSITIVE_INFINITY]));
        for (const _ of runs) {
          for (const { a, b } of candidates) {
            way.set(a, Math.min(way.get(a)!, way.get(b)! + length.get(a)!));
            way.set(b, Math.min(way.get(b)!, way.get(a)! + length.get(b)!));
          }
        }
        const seen = new Set<string>();
        for (const { section, from, wayM } of feeds) {
          expect(wayM).toBe(way.get(section));
          if (from !== null) expect(seen.has(from)).toBe(true);
          seen.add(section);
        }
        expect(seen.size).toBe(runs.length);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  it('opens the far switch of a ring, and all but one of two side by side', () => {
    const sections = ['s', 'a', 'b', 'c', 'away'].map((id, i) => ({ id, lengthM: 100 + i }));
    const switches = [
      { id: 'sa', a: 's', b: 'a' },
      { id: 'sa2', a: 'a', b: 's' },
      { id: 'ab', a: 'a', b: 'b' },
      { id: 'bc', a: 'b', b: 'c' },
      { id: 'cs', a: 'c', b: 's' },
    ];
    const { normallyOpen, feeds, unfed } = feedingWays(sections, switches, 's');
    expect(normallyOpen).toEqual(['sa2', 'bc']);
    expect(unfed).toEqual(['away']);
    expect(feeds.find(({ section }) => section === 'b')).toEqual({ section: 'b', through: 'ab', from: 'a', wayM: 303 });
  });

  it('refuses what is not there', () => {
    expect(() => feedingWays([{ id: 's', lengthM: 1 }], [{ id: 'x', a: 's', b: 't' }], 's')).toThrow(
      /Switch x names section t/,
    );
  });
});
