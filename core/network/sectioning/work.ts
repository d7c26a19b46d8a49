import type { Watch } from './types.ts';

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

/** Thrown when the watch says to stop. */
export class Stopped extends Error {
  constructor() {
    super('The planning was stopped.');
  }
}

/** Progress is told in steps of this, at least. */
const LEAST_PROGRESS = 0.005;

/** Steps of work allowed, so that what is found depends on a number and never on the clock; and the caller's watch. */
export class Work {
  #left: number;
  #spent = 0;
  #settled = 0;
  #told = 0;
  readonly #total: number;
  readonly #watch: Watch | undefined;

  constructor(steps: number, watch?: Watch) {
    this.#left = steps;
    this.#total = steps;
    this.#watch = watch;
  }

  get left(): number {
    return this.#left;
  }

  /** @throws OutOfWork when less than nothing is left, Stopped when the watch says so. */
  charge(steps: number): void {
    this.#left -= steps;
    this.#spent += steps;
    this.pause();
    if (this.#left < 0) throw new OutOfWork();
  }

  /** Lets the watch look in. @throws Stopped when it says so. */
  pause(): void {
    if (!this.#watch) return;
    if (this.#watch.shouldStop()) throw new Stopped();
    const fraction = this.#settled + (1 - this.#settled) * Math.min(1, this.#spent / this.#total);
    if (fraction < this.#told + LEAST_PROGRESS && fraction < 1) return;
    this.#told = fraction;
    this.#watch.progress(fraction);
  }

  /** `fraction` of the whole is done, whatever work is left. */
  settle(fraction: number): void {
    this.#settled = fraction;
    this.pause();
  }

  /** Tries something with at most `steps` of what is left; undefined when that was not enough. */
  attempt<T>(steps: number, task: () => T): T | undefined {
    const kept = Math.max(0, this.#left - steps);
    this.#left -= kept;
    try {
      return task();
    } catch (error) {
      if (error instanceof OutOfWork) return undefined;
      throw error;
    } finally {
      this.#left = Math.max(0, this.#left) + kept;
    }
  }
}
