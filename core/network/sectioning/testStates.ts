import { feedingWays } from './normallyOpen.ts';
import type { SectionGraph } from './sectionGraph.ts';

/** How every switch between sections stands, and what is live then. Sections by number. */
export interface SwitchState {
  readonly open: readonly string[];
  readonly closed: readonly string[];
  readonly live: readonly number[];
}

export interface SectionTest {
  readonly section: number;
  /** Sections from the energiser to this one, both ends included; empty when no way leads to it. */
  readonly way: readonly number[];
  /**
   * Exactly the section and its way are live: one closed switch for every step of the way, all others open. Null when no
   * way leads to it.
   */
  readonly alone: SwitchState | null;
  /**
   * The section is cut off on every side and everything that can be fed without it is live: every switch at the section
   * is open, all others are closed (also those that normally stand open). Null for the section at the energiser, which
   * can only be cut off at the energiser itself.
   */
  readonly allBut: SwitchState | null;
  /**
   * Sections that are dead in `allBut` though nothing is wrong with them: every way to them leads through this section.
   * On a tree that is all it feeds, on a ring often nothing. For the section at the energiser: all the others.
   */
  readonly fedOnlyThroughIt: readonly number[];
}

/** Prepared for the tests of many sections of one plan. */
export class SectionTests {
  readonly #graph: SectionGraph;
  readonly #at: readonly (readonly number[])[];
  readonly #from: Int32Array;
  readonly #through: readonly (string | null)[];
  readonly #fed: Uint8Array;

  constructor(graph: SectionGraph) {
    this.#graph = graph;
    const count = graph.sections.length;
    const at: number[][] = Array.from({ length: count }, () => []);
    graph.switches.forEach(({ a, b }, s) => {
      at[a]!.push(s);
      at[b]!.push(s);
    });
    this.#at = at;
    const { feeds } = feedingWays(
      graph.sections.map(({ lengthM }, s) => ({ id: String(s), lengthM })),
      graph.switches.map(({ id, a, b }) => ({ id, a: String(a), b: String(b) })),
      '0',
    );
    this.#from = new Int32Array(count).fill(-1);
    this.#fed = new Uint8Array(count);
    const through = new Array<string | null>(count).fill(null);
    for (const feed of feeds) {
      const section = Number(feed.section);
      this.#fed[section] = 1;
      this.#from[section] = feed.from === null ? -1 : Number(feed.from);
      through[section] = feed.through;
    }
    this.#through = through;
  }

  of(section: number): SectionTest {
    const way = this.#wayTo(section);
    const avoided = this.#reachedWithout(section);
    const fedOnlyThroughIt: number[] = [];
    for (let s = 0; s < avoided.length; s++) {
      if (s !== section && this.#fed[s] && !avoided[s]) fedOnlyThroughIt.push(s);
    }
    return {
      section,
      way,
      alone: way.length === 0 ? null : this.#alone(way),
      allBut: section === 0 ? null : this.#allBut(section, avoided),
      fedOnlyThroughIt,
    };
  }

  #wayTo(section: number): number[] {
    const way: number[] = [];
    if (!this.#fed[section]) return way;
    for (let s = section; s >= 0; s = this.#from[s]!) way.push(s);
    return way.reverse();
  }

  #alone(way: readonly number[]): SwitchState {
    const closed = new Set(way.slice(1).map((s) => this.#through[s]!));
    return this.#state((id) => closed.has(id), way);
  }

  #allBut(section: number, avoided: Uint8Array): SwitchState {
    const own = new Set(this.#at[section]!.map((s) => this.#graph.switches[s]!.id));
    const live: number[] = [];
    for (let s = 0; s < avoided.length; s++) if (avoided[s]) live.push(s);
    return this.#state((id) => !own.has(id), live);
  }

  #state(isClosed: (id: string) => boolean, live: readonly number[]): SwitchState {
    const open: string[] = [];
    const closed: string[] = [];
    for (const { id } of this.#graph.switches) (isClosed(id) ? closed : open).push(id);
    return { open, closed, live };
  }

  #reachedWithout(section: number): Uint8Array {
    const reached = new Uint8Array(this.#graph.sections.length);
    if (section === 0) return reached;
    const stack = [0];
    reached[0] = 1;
    while (stack.length > 0) {
      const s = stack.pop()!;
      for (const i of this.#at[s]!) {
        const { a, b } = this.#graph.switches[i]!;
        const next = a === s ? b : a;
        if (next === section || reached[next]) continue;
        reached[next] = 1;
        stack.push(next);
      }
    }
    return reached;
  }
}

/** For every section of a plan, how it can be tested on its own. */
export function testStates(graph: SectionGraph): SectionTest[] {
  const tests = new SectionTests(graph);
  return graph.sections.map((_, section) => tests.of(section));
}
