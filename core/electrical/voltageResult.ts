import type { CircuitProblem } from './circuit/circuitProblems.ts';

/** The estimated peak everywhere, in volts to earth. */
export interface Voltages {
  readonly ok: true;
  readonly nodeVoltageV: Float64Array;
  /** 1 where a conducting path leads to the energiser, 0 where the node is dead. (Behind a dead short a reached node also reads 0 V.) */
  readonly reached: Uint8Array;
  /** At the energiser's node. */
  readonly sourceVoltageV: number;
  readonly sourceCurrentA: number;
  /** What the fence looks like from the energiser; `Infinity` when nothing leaks. */
  readonly fenceOhm: number;
}

/** No answer, and why: never a wrong number and never NaN. */
export interface VoltageRefusal {
  readonly ok: false;
  readonly problems: readonly CircuitProblem[];
}
