import type { Steps } from '../../model/steps.ts';

/** Thrown when the work allowed is used up. */
export class OutOfWork extends Error {
  constructor() {
    super('The work allowed for an exact plan is used up.');
  }
}

/** Thrown when one ring block takes more work than a block is allowed. */
export class HardBlock extends OutOfWork {
  /** One of its edges. */
  readonly edge: number;

  constructor(edge: number) {
    super();
    this.edge = edge;
  }
}

/** After so many steps there is a pause: about a millisecond's. */
const STEPS_TO_PAUSE = 20_000;

/** Steps of work allowed, so that what is found depends on a number and never on the clock. */
export class Work {
  #left: number;
  #spent = 0;
  #sincePause = 0;
  readonly #total: number;

  constructor(steps: number) {
    this.#left = steps;
    this.#total = steps;
  }

  get left(): number {
    return this.#left;
  }

  /** The share of all the work allowed that is spent, 0 to 1. */
  get spent(): number {
    return this.#total > 0 ? Math.min(1, this.#spent / this.#total) : 1;
  }

  /** @throws OutOfWork when less than nothing is left. */
  charge(steps: number): void {
    this.#left -= steps;
    this.#spent += steps;
    this.#sincePause += steps;
    if (this.#left < 0) throw new OutOfWork();
  }

  /** Whether it is time for a pause; `more` are steps that no one is charged for. */
  isPauseDue(more = 0): boolean {
    this.#sincePause += more;
    if (this.#sincePause < STEPS_TO_PAUSE) return false;
    this.#sincePause = 0;
    return true;
  }

  /** Tries something with at most `steps` of what is left; undefined when that was not enough. */
  *attempt<T>(steps: number, task: () => Steps<T>): Steps<T | undefined> {
    const kept = Math.max(0, this.#left - steps);
    this.#left -= kept;
    try {
      return yield* task();
    } catch (error) {
      if (error instanceof OutOfWork) return undefined;
      throw error;
    } finally {
      this.#left = Math.max(0, this.#left) + kept;
    }
  }
}
