import { Heap } from './heap.ts';

/** A section as far as feeding it goes. */
export interface FedSection {
  readonly id: string;
  readonly lengthM: number;
}

export interface FeedingSwitch {
  readonly id: string;
  readonly a: string;
  readonly b: string;
}

export interface Feed {
  readonly section: string;
  /** The switch it is fed through; null for the section at the energiser. */
  readonly through: string | null;
  /** The section it is fed from; null for the section at the energiser. */
  readonly from: string | null;
  /** Fence from the energiser to its far end: its own length and that of every section on the way. */
  readonly wayM: number;
}

export interface Feeding {
  /** Ring switches that normally stand open, in the order given. */
  readonly normallyOpen: readonly string[];
  /** Every section the energiser reaches, each after the one it is fed from. */
  readonly feeds: readonly Feed[];
  /** Sections with no way from the energiser. */
  readonly unfed: readonly string[];
}

/**
 * Which switches normally stand open, so that every section is fed one way: the shortest, counted in metres of fence on
 * the way (Dijkstra 1959), fewest switches first among equals. With them open every section has one supply side, and a
 * fault can be searched for switch by switch; closing one of them feeds a section from its other side while the first is
 * worked on.
 */
export function feedingWays(
  sections: readonly FedSection[],
  switches: readonly FeedingSwitch[],
  source: string,
): Feeding {
  const indexOf = new Map(sections.map((section, s) => [section.id, s]));
  const place = (id: string, switchId: string | null): number => {
    const s = indexOf.get(id);
    if (s === undefined) {
      if (switchId === null) throw new RangeError(`The source names section ${id}, which is not among the sections.`);
      throw new RangeError(`Switch ${switchId} names section ${id}, which is not among the sections.`);
    }
    return s;
  };
  const neighbours: { to: number; by: number }[][] = sections.map(() => []);
  switches.forEach(({ id, a, b }, by) => {
    const from = place(a, id);
    const to = place(b, id);
    neighbours[from]!.push({ to, by });
    neighbours[to]!.push({ to: from, by });
  });

  const first = place(source, null);
  const best: (Reach | undefined)[] = sections.map(() => undefined);
  const done = new Uint8Array(sections.length);
  const feeds: Feed[] = [];
  const queue = new Heap<Reach>(isShorter);
  queue.add({ section: first, wayM: sections[first]!.lengthM, hops: 0, from: -1, by: -1 });
  for (let reach = queue.take(); reach; reach = queue.take()) {
    const { section, wayM, hops, from, by } = reach;
    if (done[section]) continue;
    done[section] = 1;
    feeds.push({
      section: sections[section]!.id,
      through: by < 0 ? null : switches[by]!.id,
      from: from < 0 ? null : sections[from]!.id,
      wayM,
    });
    for (const next of neighbours[section]!) {
      if (done[next.to]) continue;
      const longer = {
        section: next.to,
        wayM: wayM + sections[next.to]!.lengthM,
        hops: hops + 1,
        from: section,
        by: next.by,
      };
      const known = best[next.to];
      if (known && !isShorter(longer, known)) continue;
      best[next.to] = longer;
      queue.add(longer);
    }
  }
  const closed = new Set(feeds.map((feed) => feed.through));
  return {
    normallyOpen: switches
      .filter(({ id, a, b }) => !closed.has(id) && a !== b && done[indexOf.get(a)!])
      .map(({ id }) => id),
    feeds,
    unfed: sections.filter((_, s) => !done[s]).map(({ id }) => id),
  };
}

interface Reach {
  readonly section: number;
  readonly wayM: number;
  readonly hops: number;
  readonly from: number;
  readonly by: number;
}

function isShorter(x: Reach, y: Reach): boolean {
  return x.wayM < y.wayM || (x.wayM === y.wayM && (x.hops < y.hops || (x.hops === y.hops && x.by < y.by)));
}
