import { largestOf } from '../../model/extremes.ts';
import type { Steps } from '../../model/steps.ts';
import type { FenceCircuit } from '../circuit/circuit.ts';
import { choleskyInverseSteps } from './choleskyInverse.ts';
import { type LeakageSection, leakageSlopes, withLeakage } from './leakageModel.ts';
import type { SwitchState } from './switchStates.ts';

/** The furthest a section can go from its class, as a logarithm: a ten-thousandfold. */
export const LIMIT = Math.log(1e4);
const MOST_STEPS = 200;

export type Matrix = readonly (readonly number[])[];

export interface Minimum {
  readonly logTimes: readonly number[];
  /** J'J of the readings alone. */
  readonly curvature: Matrix;
  readonly covariance: Matrix | null;
  readonly estimateV: ReadonlyMap<number, number>;
  readonly converged: boolean;
}

/**
 * Where half the weighted sum of squares plus half of u' `pull` u is least, u the logarithms of the sections' leakage and
 * `pull` a precision matrix (all zeros for none); `null` where the network has no answer. Damping is the same in every
 * direction, a limit on how many e-folds one step may go.
 */
export function* minimise(
  states: readonly SwitchState[],
  circuit: FenceCircuit,
  sections: readonly LeakageSection[],
  pull: Matrix,
  start: readonly number[],
): Steps<Minimum | null> {
  let at = [...start];
  const first = yield* evaluate(states, circuit, sections, at, pull);
  if (first === null) return null;
  let here: Guess = first;
  let damping = 1;
  let converged = false;
  for (let step = 0; step < MOST_STEPS && !converged; step++) {
    const damped = here.curvature.map((row, i) =>
      row.map((value, j) => value + pull[i]![j]! + (i === j ? damping : 0)),
    );
    const inverse = yield* choleskyInverseSteps(damped);
    if (inverse === null) {
      damping *= 10;
      if (damping > 1e12) break;
      continue;
    }
    const next = at.map((u, i) => {
      const move = inverse[i]!.reduce((sum, value, j) => sum - value * here.gradient[j]!, 0);
      return Math.min(LIMIT, Math.max(-LIMIT, u + move));
    });
    const there: Guess | null = yield* evaluate(states, circuit, sections, next, pull);
    const longest = Math.max(0, largestOf(next.map((u, i) => Math.abs(u - at[i]!))));
    if (there !== null && there.cost <= here.cost) {
      converged = longest < 1e-9 || (damping < 1e-3 && here.cost - there.cost < 1e-13 * (1 + here.cost));
      at = next;
      here = there;
      damping = Math.max(1e-9, damping / 10);
    } else {
      converged = longest < 1e-9;
      damping *= 10;
      if (damping > 1e12) break;
    }
  }
  const { curvature, estimateV } = here;
  const pulled = curvature.map((row, i) => row.map((value, j) => value + pull[i]![j]!));
  return { logTimes: at, curvature, covariance: yield* choleskyInverseSteps(pulled), estimateV, converged };
}

interface Guess {
  readonly cost: number;
  readonly gradient: readonly number[];
  readonly curvature: Matrix;
  readonly estimateV: ReadonlyMap<number, number>;
}

/** Cost (half the sum of squares), its gradient, and J'J of the readings, at one guess. */
function* evaluate(
  states: readonly SwitchState[],
  circuit: FenceCircuit,
  sections: readonly LeakageSection[],
  logTimes: readonly number[],
  pull: Matrix,
): Steps<Guess | null> {
  const leaking = withLeakage(circuit, sections, logTimes.map(Math.exp));
  const count = sections.length;
  const curvature = Array.from({ length: count }, () => Array.from({ length: count }, () => 0));
  const gradient = pull.map((row) => row.reduce((sum, value, j) => sum + value * logTimes[j]!, 0));
  let cost = gradient.reduce((sum, g, i) => sum + (g * logTimes[i]!) / 2, 0);
  const estimateV = new Map<number, number>();
  for (const state of states) {
    const prepared = state.prepared.refigured(state.toggled(leaking));
    if (!prepared.ok || !prepared.asIs.ok) return null;
    const { nodeVoltageV } = prepared.asIs;
    for (const { index, node, volts, sigmaV } of state.readings) {
      estimateV.set(index, nodeVoltageV[node]!);
      const residual = (nodeVoltageV[node]! - volts) / sigmaV;
      const slopes = leakageSlopes(prepared, nodeVoltageV, node, sections).map((slope) => slope / sigmaV);
      cost += residual ** 2 / 2;
      for (let i = 0; i < count; i++) {
        gradient[i]! += slopes[i]! * residual;
        for (let j = 0; j < count; j++) curvature[i]![j]! += slopes[i]! * slopes[j]!;
      }
      yield;
    }
  }
  return { cost, gradient, curvature, estimateV };
}
