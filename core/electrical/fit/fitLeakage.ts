import { allAtOnce, type Steps } from '../../model/steps.ts';
import { type Message, message } from '../../words/message.ts';
import type { FenceCircuit } from '../circuit/circuit.ts';
import { type PreparedVoltage, prepareVoltage } from '../preparedVoltage.ts';
import { currentsAt } from '../solver/currents.ts';
import { growthPull, WEAKER_THAN_THE_PULL } from './growthPull.ts';
import { inputProblems } from './inputProblems.ts';
import { type LeakageSection, withLeakage } from './leakageModel.ts';
import { LIMIT, type Minimum, minimise } from './minimise.ts';
import { notToldApart } from './notToldApart.ts';
import type { VoltageReading } from './reading.ts';
import { type SwitchState, switchStates } from './switchStates.ts';
import { symmetricEigenSteps } from './symmetricEigen.ts';

export interface FittedSection {
  readonly name: string;
  /** Fitted leakage over what its growth class gave. */
  readonly timesAssumed: number;
  /** One standard error either way, as factors: the leakage lies between `timesAssumed / errorFactor` and `timesAssumed * errorFactor`. */
  readonly errorFactor: number;
  /** Fitted leakage resistance of one kilometre of its fence, on average. */
  readonly leakageOhmKm: number;
  /** Current that it leaks with the circuit's own switches. */
  readonly leakA: number;
  /** 'told': by the readings. 'leaning': they say too little, and the growth class and the other sections decide. 'atLimit': no leak to speak of, or beyond a ten-thousandfold. */
  readonly verdict: 'told' | 'leaning' | 'atLimit';
}

export interface LeakageFit {
  readonly ok: true;
  /** In the order given. */
  readonly sections: readonly FittedSection[];
  /** Index of the section that leaks the most current. */
  readonly mostLeaking: number;
  /** Sections that the readings cannot tell apart, or (alone in its group) say nothing about. Empty: the readings told everything. */
  readonly notToldApart: readonly (readonly number[])[];
  /** Per reading: estimate with the fitted leakage minus what was read (V); `null` for a reading at a dead place, left out of the fit. */
  readonly residualV: readonly (number | null)[];
  /** Root mean square of residual over sigma: about 1 or less is as good as the readings; far above it the network or a reading is wrong. */
  readonly misfit: number;
  /** False: the search stopped before it settled; take the figures with care. */
  readonly converged: boolean;
  readonly circuit: FenceCircuit;
}

export interface FitRefusal {
  readonly ok: false;
  readonly messages: readonly Message[];
}

/**
 * Fits the leakage of each section to readings by weighted least squares on its logarithm (so it stays positive),
 * Levenberg-Marquardt with exact slopes (K. Levenberg 1944, D. W. Marquardt 1963).
 *
 * First the sections are also drawn weakly towards their growth class (`growthPull.ts`). Where the readings then settle
 * every combination of sections better than that pull does, the fit is done again without it; otherwise the pull stays
 * and the result says which sections cannot be told apart. Standard errors are from the curvature at the end, and take the network itself
 * (wire, joints, energiser) as right.
 */
export function fitLeakage(
  circuit: FenceCircuit,
  sections: readonly LeakageSection[],
  readings: readonly VoltageReading[],
): LeakageFit | FitRefusal {
  return allAtOnce(fitLeakageSteps(circuit, sections, readings));
}

export function* fitLeakageSteps(
  circuit: FenceCircuit,
  sections: readonly LeakageSection[],
  readings: readonly VoltageReading[],
): Steps<LeakageFit | FitRefusal> {
  const base = prepareVoltage(circuit);
  const messages = base.ok ? inputProblems(circuit, sections, readings) : base.problems.map((p) => p.message);
  if (!base.ok || messages.length > 0) return { ok: false, messages };

  const states = switchStates(base, readings);
  const none = sections.map(() => 0);
  const pulled = yield* minimise(states, circuit, sections, growthPull(sections.length), none);
  if (pulled === null) {
    return { ok: false, messages: [message('power.fit.noAnswer')] };
  }
  const { values, vectors } = yield* symmetricEigenSteps(pulled.curvature);
  const open = vectors.filter((_, k) => values[k]! < WEAKER_THAN_THE_PULL);
  const free =
    open.length === 0
      ? yield* minimise(
          states,
          circuit,
          sections,
          sections.map(() => none),
          pulled.logTimes,
        )
      : null;
  const openGroups = yield* notToldApart(free === null ? open : [], sections.length);
  return report(base, sections, readings, states, free ?? pulled, openGroups);
}

function report(
  base: PreparedVoltage,
  sections: readonly LeakageSection[],
  readings: readonly VoltageReading[],
  states: readonly SwitchState[],
  minimum: Minimum,
  openGroups: readonly (readonly number[])[],
): LeakageFit {
  const times = minimum.logTimes.map(Math.exp);
  const circuit = withLeakage(base.circuit, sections, times);
  const leak = leakageCurrents(base, circuit);
  const leaning = new Set(openGroups.flat());
  const fitted = sections.map((section, s): FittedSection => {
    let km = 0;
    let leakS = 0;
    let leakA = 0;
    for (const i of section.spans) {
      const { lengthM, leakageOhmKm } = circuit.spans[i]!;
      km += lengthM / 1000;
      leakS += lengthM / 1000 / leakageOhmKm;
      leakA += leak[i]!;
    }
    const variance = minimum.covariance?.[s]?.[s] ?? Infinity;
    return {
      name: section.name,
      timesAssumed: times[s]!,
      errorFactor: Math.exp(Math.sqrt(variance)),
      leakageOhmKm: km / leakS,
      leakA,
      verdict: Math.abs(minimum.logTimes[s]!) >= LIMIT ? 'atLimit' : leaning.has(s) ? 'leaning' : 'told',
    };
  });
  const residualV = readings.map(({ volts }, i) => {
    const estimate = minimum.estimateV.get(i);
    return estimate === undefined ? null : estimate - volts;
  });
  const used = states.flatMap((state) => state.readings);
  const squares = used.reduce((sum, { index, sigmaV }) => sum + (residualV[index]! / sigmaV) ** 2, 0);
  return {
    ok: true,
    sections: fitted,
    mostLeaking: fitted.reduce((most, { leakA }, s) => (leakA > fitted[most]!.leakA ? s : most), 0),
    notToldApart: openGroups,
    residualV,
    misfit: used.length === 0 ? 0 : Math.sqrt(squares / used.length),
    converged: minimum.converged,
    circuit,
  };
}

function leakageCurrents(base: PreparedVoltage, circuit: FenceCircuit): Float64Array {
  const prepared = base.refigured(circuit);
  const leak = new Float64Array(circuit.spans.length);
  if (!prepared.ok || !prepared.asIs.ok) return leak;
  const { nodeVoltageV, sourceCurrentA } = prepared.asIs;
  const { spanFromA, spanToA } = currentsAt(circuit, prepared.branches, nodeVoltageV, sourceCurrentA);
  return leak.map((_, i) => spanFromA[i]! + spanToA[i]!);
}
