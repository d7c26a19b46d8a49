import type { Steps } from '../../model/steps.ts';
import type { CutGraph } from './contract.ts';
import { type FrontierLayout, frontierLayout } from './frontierLayout.ts';
import { frontSum } from './frontSums.ts';
import type { LengthRange } from './fronts.ts';
import { type BlockChoices, type Guide, ringFront } from './ringFront.ts';
import { dearestTree, improvedTree, type TreeBound } from './treeBound.ts';
import type { Work } from './work.ts';

/** Above any cost; small enough for whole numbers. */
const NO_CEILING = 2 ** 52;
/** States kept per step when a first plan of a block is looked for. */
const QUICK = 40;
/** Tree changes tried are this many vertices' worth, at most. */
const TREE_TRIALS = 40_000;

/** What is to be found for a ringed part. */
export interface RingQuestion {
  /** What each vertex brings along, as a front. For the root: its own amounts, at no cost. */
  readonly seedOf: (vertex: number) => Float64Array;
  readonly limits: Float64Array;
}

/**
 * A ringed part of a network with what is worked out once for it: the order in which its vertices are taken in, and the
 * tree that guides the search. The frontier programme (ringFront.ts) is told to look only at plans within a cost
 * ceiling, and turns away every state that the tree (treeBound.ts) shows can't end within it; what hangs from an open
 * section's vertices is weighed against the length that section has left, state by state.
 */
export class RingPart {
  readonly layout: FrontierLayout;
  readonly #place: Int32Array;
  readonly #work: Work;
  #tree: TreeBound | undefined;

  /** `root`: the vertex by which the part hangs on to the rest, -1 for none. */
  constructor(graph: CutGraph, root: number, work: Work) {
    this.layout = root < 0 ? lightestLayout(graph) : frontierLayout(graph, root, true);
    this.#work = work;
    this.#place = new Int32Array(graph.vertexCount);
    this.layout.steps.forEach(({ vertex }, s) => {
      this.#place[vertex] = s;
    });
  }

  /** No plan of the part costs less. */
  *bound(question: RingQuestion, range: LengthRange): Steps<number> {
    const tree = yield* this.#treeFor(question);
    return tree.compute(question.seedOf, question.limits, range);
  }

  /**
   * The front at the root, reaching `window` above the least cost; with `choices`, also how to make a point of it.
   * @throws OutOfWork
   */
  *front(question: RingQuestion, window: number, range: LengthRange, choices?: BlockChoices): Steps<Float64Array> {
    yield* this.bound(question, range);
    const unseen = { kept: 0, refused: Number.POSITIVE_INFINITY };
    const quick = (yield* this.#search(question, NO_CEILING, QUICK, window, unseen)).front;
    const ceiling = quick[0]! + window - 1;
    return (yield* this.#search(question, ceiling, Number.POSITIVE_INFINITY, window, range, choices)).front;
  }

  /**
   * The cheapest plan that costs at most `ceiling`, or undefined when there is none. With at most `most` states kept
   * after a step it is quick, finds good plans, and proves nothing.
   * @throws OutOfWork
   */
  *within(
    question: RingQuestion,
    ceiling: number,
    range: LengthRange,
    most = Number.POSITIVE_INFINITY,
  ): Steps<{ cost: number; choices: BlockChoices } | undefined> {
    yield* this.bound(question, range);
    const { front, choices } = yield* this.#search(question, Math.min(ceiling, NO_CEILING), most, 1, range, 'cheapest');
    return choices && { cost: front[0]!, choices };
  }

  #search(
    { seedOf, limits }: RingQuestion,
    ceiling: number,
    most: number,
    window: number,
    range: LengthRange,
    choices?: BlockChoices | 'cheapest',
  ) {
    const guide = this.#guide(limits, ceiling, most, range);
    return ringFront({ layout: this.layout, seedOf, limits, window, guide }, range, this.#work, choices);
  }

  *#treeFor({ seedOf, limits }: RingQuestion): Steps<TreeBound> {
    if (!this.#tree) {
      const trials = Math.floor(TREE_TRIALS / this.layout.steps.length);
      this.#tree = yield* improvedTree(this.layout, dearestTree(this.layout), seedOf, limits, trials);
    }
    return this.#tree;
  }

  #guide(limits: Float64Array, ceiling: number, most: number, range: LengthRange): Guide {
    const { children, costAfter } = this.#tree!;
    const { steps } = this.layout;
    const nothing = new Float64Array(1 + limits.length);
    // What hangs from one frontier vertex changes only when one of its children is taken in.
    const own: ({ readonly waiting: number; readonly front: Float64Array } | undefined)[] = [];
    const choicesOf = (v: number, s: number): Float64Array => {
      const waiting = children[v]!.filter((child) => this.#place[child]! > s);
      const known = own[v];
      if (known && known.waiting === waiting.length) return known.front;
      let front: Float64Array = nothing;
      for (const child of waiting) front = frontSum(front, this.#tree!.optionsOf(child), limits, range);
      own[v] = { waiting: waiting.length, front };
      return front;
    };
    let cachedStep = -1;
    let cache = new Map<number, Float64Array>();
    const choicesAt = (s: number, slots: number): Float64Array => {
      if (s !== cachedStep) {
        cachedStep = s;
        cache = new Map();
      }
      const found = cache.get(slots);
      if (found) return found;
      const { frontier, vertex, stays } = steps[s]!;
      const lowest = 31 - Math.clz32(slots & -slots);
      const slot = stays[lowest]!;
      const last = choicesOf(slot < frontier.length ? frontier[slot]! : vertex, s);
      const others = slots & (slots - 1);
      const front =
        others === 0
          ? last
          : last === nothing
            ? choicesAt(s, others)
            : frontSum(choicesAt(s, others), last, limits, range);
      cache.set(slots, front);
      return front;
    };
    return { ceiling, most, costAfter, choicesAt };
  }
}

/** Tries several vertices to start from and takes the order with the fewest states to expect. */
function lightestLayout(graph: CutGraph): FrontierLayout {
  const tries = Math.max(1, Math.min(graph.vertexCount, Math.floor(20_000 / graph.vertexCount)));
  let best: FrontierLayout | undefined;
  for (let t = 0; t < tries; t++) {
    const layout = frontierLayout(graph, Math.floor((t * graph.vertexCount) / tries), false);
    if (!best || layout.burden < best.burden) best = layout;
  }
  return best!;
}
