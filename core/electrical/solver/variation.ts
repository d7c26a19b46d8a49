import { message } from '../../words/message.ts';
import type { Fault, FenceCircuit } from '../circuit/circuit.ts';
import { type CircuitProblem, circuitProblems } from '../circuit/circuitProblems.ts';
import { siemens } from '../circuit/siemens.ts';
import type { VoltageRefusal, Voltages } from '../voltageResult.ts';
import type { Branches } from './branches.ts';
import { eliminate, type Factor, type PlanValues } from './factor.ts';
import type { FactorPlan } from './factorPlan.ts';
import type { Reach } from './reach.ts';
import { readSource, readVoltages, type SourceReading } from './readVoltages.ts';

/** What differs from the circuit as prepared. */
export interface Variation {
  /** Links to open, and open ones to close, by index. */
  readonly open?: readonly number[];
  readonly close?: readonly number[];
  /** Faults on top of the circuit's own. */
  readonly faults?: readonly Fault[];
}

interface Eliminated {
  readonly circuit: FenceCircuit;
  readonly branches: Branches;
  readonly plan: FactorPlan;
  readonly values: PlanValues;
  readonly factor: Factor;
  readonly reach: Reach;
}

export interface Variations {
  vary(variation: Variation): Voltages | VoltageRefusal;
  trying: Trying;
}

/**
 * Reads a variation from its factor, before that is put right again, with the columns that differ from the circuit as
 * prepared, ascending.
 */
export type Trying = <T>(
  variation: Variation,
  read: (factor: Factor, changed: Int32Array, source: SourceReading) => T,
) => T | VoltageRefusal;

/**
 * Answers variations of one eliminated circuit. A change in a column reaches only the columns on its way to the source's
 * node (each column's first row is the next), so those alone are eliminated again, in a copy of the factor that is put
 * right afterwards.
 */
export function variationsOf(eliminated: Eliminated): Variations {
  const { circuit, branches, plan, values, factor, reach } = eliminated;
  const { nodeCount, links } = circuit;
  const { spanCount, from, to } = branches;
  const marked = new Uint8Array(nodeCount);
  let trial: Factor | undefined;

  return {
    vary: (variation) =>
      tried(variation, (trialFactor, _, closedNow) => {
        const reached = reach((link) => closedNow.get(link) ?? !links[link]!.open);
        return readVoltages(circuit, plan, trialFactor, reached);
      }),
    trying: (variation, read) =>
      tried(variation, (trialFactor, changed) => {
        const source = readSource(circuit, trialFactor);
        return source.ok ? read(trialFactor, changed, source) : source;
      }),
  };

  function tried<T>(
    { open = [], close = [], faults = [] }: Variation,
    read: (trialFactor: Factor, changed: Int32Array, closedNow: ReadonlyMap<number, boolean>) => T,
  ): T | VoltageRefusal {
    const problems = variationProblems(circuit, [...open, ...close], faults);
    if (problems.length > 0) return { ok: false, problems };
    trial ??= copyFactor(factor);

    const columns: number[] = [];
    const touch = (position: number): void => {
      let j = position;
      while (marked[j] === 0) {
        marked[j] = 1;
        columns.push(j);
        if (plan.colStart[j] === plan.colStart[j + 1]) return;
        j = plan.rowOf[plan.colStart[j]!]!;
      }
    };
    const closedNow = new Map<number, boolean>();
    for (const link of open) closedNow.set(link, false);
    for (const link of close) closedNow.set(link, true);
    for (const [link, isClosed] of closedNow) {
      const b = spanCount + link;
      if (plan.slotOf[b]! < 0) continue;
      values.slotS[plan.slotOf[b]!] = isClosed ? siemens(links[link]!.ohm) : 0;
      touch(Math.min(plan.positionOf[from[b]!]!, plan.positionOf[to[b]!]!));
    }
    for (const fault of faults) {
      values.shuntS[plan.positionOf[fault.node]!]! += siemens(fault.ohm);
      touch(plan.positionOf[fault.node]!);
    }

    const changed = Int32Array.from(columns).sort();
    eliminate(plan, values, trial, changed);
    const answer = read(trial, changed, closedNow);

    copyColumns(plan, factor, trial, changed);
    for (const j of changed) marked[j] = 0;
    for (const link of closedNow.keys()) {
      const slot = plan.slotOf[spanCount + link]!;
      if (slot >= 0) values.slotS[slot] = branches.seriesS[spanCount + link]!;
    }
    for (const { node } of faults) values.shuntS[plan.positionOf[node]!] = branches.shuntS[node]!;
    return answer;
  }
}

function variationProblems(
  circuit: FenceCircuit,
  asked: readonly number[],
  faults: readonly Fault[],
): CircuitProblem[] {
  const problems = circuitProblems({ ...circuit, spans: [], links: [], faults });
  for (const link of asked) {
    if (circuit.links[link] !== undefined) continue;
    const said = message('power.circuit.noLink', { link: `${link}`, mostLink: circuit.links.length - 1 });
    problems.push({ code: 'bad-node', where: { kind: 'link', index: link }, message: said });
  }
  return problems;
}

function copyFactor(factor: Factor): Factor {
  return {
    entryS: factor.entryS.slice(),
    weight: factor.weight.slice(),
    shuntS: factor.shuntS.slice(),
    earthWeight: factor.earthWeight.slice(),
    totalS: factor.totalS.slice(),
    mergedBy: factor.mergedBy.slice(),
    work: factor.work,
  };
}

function copyColumns(plan: FactorPlan, from: Factor, to: Factor, columns: Int32Array): void {
  for (const j of columns) {
    to.shuntS[j] = from.shuntS[j]!;
    to.earthWeight[j] = from.earthWeight[j]!;
    to.totalS[j] = from.totalS[j]!;
    to.mergedBy[j] = from.mergedBy[j]!;
    for (let t = plan.colStart[j]!; t < plan.colStart[j + 1]!; t++) {
      to.entryS[t] = from.entryS[t]!;
      to.weight[t] = from.weight[t]!;
    }
  }
}
