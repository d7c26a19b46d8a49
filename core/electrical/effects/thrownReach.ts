import type { FenceCircuit } from '../circuit/circuit.ts';
import type { Branches } from '../solver/branches.ts';
import { type ConductingWalk, conductingWalk } from './conductingWalk.ts';

/** What throwing one link does to who has a way to the energiser. */
export interface ReachChange {
  /** Nodes that lose their way (opened) or gain one (closed). */
  readonly nodes: number;
  /** Metres of run likewise. */
  readonly lengthM: number;
  /** Runs that have a way afterwards. */
  readonly runsReached: number;
  /** Numbers of the nodes concerned, by `ThrownReach.numberOf`: from `first` up to, not including, `end`. */
  readonly first: number;
  readonly end: number;
  readonly gains: boolean;
}

/**
 * Who has a way to the energiser when one link is thrown, without looking at every node: in the order of a depth-first
 * walk what hangs on the energiser by one link alone has consecutive numbers, and so has every part that nothing reaches.
 */
export class ThrownReach {
  /** How many nodes the energiser reaches as things stand: those with the lowest numbers. */
  readonly reachedCount: number;
  readonly #circuit: FenceCircuit;
  readonly #branches: Branches;
  readonly #walk: ConductingWalk;
  /** By number: metres and count of the runs that begin at nodes with lower numbers; the metres in two parts. */
  readonly #metres: Float64Array;
  readonly #metresRest: Float64Array;
  readonly #runs: Int32Array;

  constructor(circuit: FenceCircuit, branches: Branches) {
    const { nodeCount, source, links } = circuit;
    const { spanCount } = branches;
    this.#circuit = circuit;
    this.#branches = branches;
    this.#walk = conductingWalk(nodeCount, branches, source.node, (b) => b < spanCount || !links[b - spanCount]!.open);
    this.reachedCount = this.#walk.endOf[source.node]!;
    this.#metres = new Float64Array(nodeCount + 1);
    this.#metresRest = new Float64Array(nodeCount + 1);
    this.#runs = new Int32Array(nodeCount + 1);
    this.#addUpRuns();
  }

  numberOf(node: number): number {
    return this.#walk.numberOf[node]!;
  }

  /** What opening a closed link, or closing an open one, does. */
  change(link: number): ReachChange {
    const { from, to, spanCount } = this.#branches;
    const { numberOf, endOf, foundBy, onlyWay, partOf, partStart } = this.#walk;
    const b = spanCount + link;
    const [u, v] = [from[b]!, to[b]!];
    if (this.#circuit.links[link]!.open) {
      const [near, far] = [partOf[u]!, partOf[v]!].sort((x, y) => x - y) as [number, number];
      return near === 0 && far > 0 ? this.#over(partStart[far]!, partStart[far + 1]!, true) : this.#over(0, 0, true);
    }
    const below = foundBy[u] === b ? u : foundBy[v] === b ? v : -1;
    const dies = below >= 0 && onlyWay[below] === 1 && partOf[below] === 0;
    return dies ? this.#over(numberOf[below]!, endOf[below]!, false) : this.#over(0, 0, false);
  }

  /** Whether the node of this number has a way after the change. */
  isReached(number: number, { first, end, gains }: ReachChange): boolean {
    return number >= first && number < end ? gains : number < this.reachedCount;
  }

  #over(first: number, end: number, gains: boolean): ReachChange {
    const runs = this.#runs[end]! - this.#runs[first]!;
    const runsNow = this.#runs[this.reachedCount]!;
    const metres = this.#metres[end]! - this.#metres[first]!;
    const lengthM = metres + (this.#metresRest[end]! - this.#metresRest[first]!);
    return { nodes: end - first, lengthM, runsReached: gains ? runsNow + runs : runsNow - runs, first, end, gains };
  }

  /** Running sums, with what the additions rounded off beside them: so that the difference of two is as good as a sum. */
  #addUpRuns(): void {
    const { nodeCount, spans } = this.#circuit;
    const { numberOf } = this.#walk;
    for (const { from } of spans) this.#runs[numberOf[from]! + 1]!++;
    for (let n = 0; n < nodeCount; n++) this.#runs[n + 1]! += this.#runs[n]!;
    const fill = this.#runs.slice(0, nodeCount);
    const lengths = new Float64Array(spans.length);
    for (const { from, lengthM } of spans) lengths[fill[numberOf[from]!]!++] = lengthM;
    let sum = 0;
    let rest = 0;
    for (let n = 0, i = 0; n < nodeCount; n++) {
      for (; i < this.#runs[n + 1]!; i++) {
        const more = sum + lengths[i]!;
        const added = more - sum;
        rest += sum - (more - added) + (lengths[i]! - added);
        sum = more;
      }
      this.#metres[n + 1] = sum;
      this.#metresRest[n + 1] = rest;
    }
  }
}
