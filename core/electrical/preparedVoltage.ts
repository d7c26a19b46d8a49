import type { Fault, FenceCircuit } from './circuit/circuit.ts';
import { type CircuitProblem, circuitProblems } from './circuit/circuitProblems.ts';
import { siemens } from './circuit/siemens.ts';
import { type Branches, branchesOf } from './solver/branches.ts';
import { eliminate, emptyFactor, type Factor } from './solver/factor.ts';
import { type FactorPlan, factorPlan } from './solver/factorPlan.ts';
import { reachedFrom } from './solver/reach.ts';
import { responseTo, voltagesFrom } from './solver/voltages.ts';

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

/** What differs from the circuit as prepared. */
export interface Variation {
  /** Links to open, and open ones to close, by index. */
  readonly open?: readonly number[];
  readonly close?: readonly number[];
  /** Faults on top of the circuit's own. */
  readonly faults?: readonly Fault[];
}

/** A circuit eliminated once, ready to be asked about again and again. */
export interface PreparedVoltage {
  readonly ok: true;
  readonly circuit: FenceCircuit;
  readonly branches: Branches;
  /** As the circuit stands; a refusal only for a dead short across a source of no resistance. */
  readonly asIs: Voltages | VoltageRefusal;
  /**
   * The same with some switches thrown or faults added. Only the columns between the change and the energiser are
   * eliminated again; the prepared circuit is as before afterwards.
   */
  vary(variation: Variation): Voltages | VoltageRefusal;
  withOpen(link: number): Voltages | VoltageRefusal;
  /** Same topology, other figures (lengths, wire, leakage, resistances, faults, source voltage): the plan is kept. */
  refigured(circuit: FenceCircuit): PreparedVoltage | VoltageRefusal;
  /** Volts at every node for one ampere fed in at `node` (ohm); see `solver/voltages.ts`. */
  responseTo(node: number): Float64Array;
}

/**
 * Validates, orders and eliminates. Cost grows in proportion to the network for trees and the rings of a fence; open
 * links take part in the ordering, so that any of them can be closed later without a new one.
 */
export function prepareVoltage(circuit: FenceCircuit): PreparedVoltage | VoltageRefusal {
  const problems = circuitProblems(circuit);
  if (problems.length > 0) return { ok: false, problems };
  const branches = branchesOf(circuit);
  const plan = factorPlan(circuit.nodeCount, branches.from, branches.to, circuit.source.node);
  return prepareOnPlan(circuit, branches, plan);
}

function prepareOnPlan(circuit: FenceCircuit, branches: Branches, plan: FactorPlan): PreparedVoltage {
  const { nodeCount, links, source } = circuit;
  const { spanCount, from, to, seriesS } = branches;
  const slotS = new Float64Array(plan.slotRow.length);
  for (let b = 0; b < seriesS.length; b++) if (plan.slotOf[b]! >= 0) slotS[plan.slotOf[b]!] = seriesS[b]!;
  const shuntS = new Float64Array(nodeCount);
  for (let v = 0; v < nodeCount; v++) shuntS[plan.positionOf[v]!] = branches.shuntS[v]!;
  const values = { slotS, shuntS };
  const factor = emptyFactor(plan);
  eliminate(plan, values, factor);

  const byPosition = new Float64Array(nodeCount);
  const read = (eliminated: Factor, conducts: (branch: number) => boolean): Voltages | VoltageRefusal => {
    const { openCircuitV, internalOhm } = source;
    const fenceS = eliminated.shuntS[nodeCount - 1]!;
    const shorted = fenceS === Infinity;
    if (shorted && internalOhm === 0 && openCircuitV > 0) return shortAcrossSource();
    const sourceVoltageV = shorted ? 0 : openCircuitV / (1 + internalOhm * fenceS);
    const shortedA = openCircuitV === 0 ? 0 : openCircuitV / internalOhm;
    return {
      ok: true,
      nodeVoltageV: voltagesFrom(plan, eliminated, sourceVoltageV, byPosition),
      reached: reachedFrom(source.node, nodeCount, from, to, conducts),
      sourceVoltageV,
      sourceCurrentA: shorted ? shortedA : fenceS * sourceVoltageV,
      fenceOhm: 1 / fenceS,
    };
  };
  const closed = (branch: number): boolean => branch < spanCount || !links[branch - spanCount]!.open;
  const asIs = read(factor, closed);

  let trial: Factor | undefined;
  const marked = new Uint8Array(nodeCount);
  const vary = (variation: Variation): Voltages | VoltageRefusal => {
    const { open = [], close = [], faults = [] } = variation;
    const problems = circuitProblems({ ...circuit, spans: [], links: [], faults });
    for (const link of [...open, ...close]) {
      if (links[link] === undefined) {
        const message = `There is no link ${link}; links go from 0 to ${links.length - 1}.`;
        problems.push({ code: 'bad-node', where: { kind: 'link', index: link }, message });
      }
    }
    if (problems.length > 0) return { ok: false, problems };

    trial ??= copyFactor(factor);
    const columns: number[] = [];
    const touch = (position: number): void => {
      let j = position;
      while (marked[j] === 0) {
        marked[j] = 1;
        columns.push(j);
        if (j === nodeCount - 1 || plan.colStart[j] === plan.colStart[j + 1]) break;
        j = plan.rowOf[plan.colStart[j]!]!;
      }
    };
    const setLink = (link: number, conductanceS: number): void => {
      const slot = plan.slotOf[spanCount + link]!;
      if (slot < 0) return;
      slotS[slot] = conductanceS;
      touch(Math.min(plan.positionOf[from[spanCount + link]!]!, plan.positionOf[to[spanCount + link]!]!));
    };
    const state = new Map<number, boolean>();
    for (const link of open) state.set(link, false);
    for (const link of close) state.set(link, true);
    for (const [link, isClosed] of state) setLink(link, isClosed ? siemens(links[link]!.ohm) : 0);
    for (const fault of faults) {
      const position = plan.positionOf[fault.node]!;
      shuntS[position]! += siemens(fault.ohm);
      touch(position);
    }

    const dirty = Int32Array.from(columns).sort();
    eliminate(plan, values, trial, dirty);
    const answer = read(trial, (b) => (b < spanCount ? true : (state.get(b - spanCount) ?? closed(b))));

    copyColumns(plan, factor, trial, dirty);
    for (const j of dirty) marked[j] = 0;
    for (const link of state.keys()) {
      const slot = plan.slotOf[spanCount + link]!;
      if (slot >= 0) slotS[slot] = seriesS[spanCount + link]!;
    }
    for (const fault of faults) shuntS[plan.positionOf[fault.node]!] = branches.shuntS[fault.node]!;
    return answer;
  };

  return {
    ok: true,
    circuit,
    branches,
    asIs,
    vary,
    withOpen: (link) => vary({ open: [link] }),
    refigured: (other) => refigure(plan, branches, other),
    responseTo: (node) => responseTo(plan, factor, node, source.internalOhm),
  };
}

function refigure(plan: FactorPlan, old: Branches, circuit: FenceCircuit): PreparedVoltage | VoltageRefusal {
  const problems = circuitProblems(circuit);
  if (problems.length > 0) return { ok: false, problems };
  const branches = branchesOf(circuit);
  const same =
    circuit.nodeCount === plan.nodeCount &&
    plan.positionOf[circuit.source.node] === plan.nodeCount - 1 &&
    branches.from.length === old.from.length &&
    branches.from.every((v, b) => v === old.from[b]) &&
    branches.to.every((v, b) => v === old.to[b]);
  return same ? prepareOnPlan(circuit, branches, plan) : prepareVoltage(circuit);
}

function shortAcrossSource(): VoltageRefusal {
  const message =
    'A dead short lies straight across an energiser with no internal resistance, so its current would have no limit. ' +
    'Enter the energiser’s resistance (from its open-circuit peak and its peak into 500 ohm), or the fault’s.';
  return { ok: false, problems: [{ code: 'short-across-source', where: { kind: 'source', index: 0 }, message }] };
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
