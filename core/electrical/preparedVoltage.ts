import type { FenceCircuit } from './circuit/circuit.ts';
import { circuitProblems } from './circuit/circuitProblems.ts';
import { type Branches, branchesOf } from './solver/branches.ts';
import { eliminate, emptyFactor, type Factor } from './solver/factor.ts';
import { type FactorPlan, factorPlan } from './solver/factorPlan.ts';
import { reachOf } from './solver/reach.ts';
import { readVoltages } from './solver/readVoltages.ts';
import { type Trying, type Variation, variationsOf } from './solver/variation.ts';
import { responseTo } from './solver/voltages.ts';
import type { VoltageRefusal, Voltages } from './voltageResult.ts';

/** A circuit eliminated once, ready to be asked about again and again. */
export interface PreparedVoltage {
  readonly ok: true;
  readonly circuit: FenceCircuit;
  readonly branches: Branches;
  readonly plan: FactorPlan;
  readonly factor: Factor;
  /** As the circuit stands; a refusal only for a dead short across a source of no resistance. */
  readonly asIs: Voltages | VoltageRefusal;
  /**
   * The same with some switches thrown or faults added. Only the columns between the change and the energiser are
   * eliminated again; the prepared circuit is as before afterwards.
   */
  vary(variation: Variation): Voltages | VoltageRefusal;
  /** The same without reading every node: see `solver/variation.ts`. */
  readonly trying: Trying;
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
  const { seriesS } = branches;
  const slotS = new Float64Array(plan.slotRow.length);
  for (let b = 0; b < seriesS.length; b++) if (plan.slotOf[b]! >= 0) slotS[plan.slotOf[b]!] = seriesS[b]!;
  const shuntS = new Float64Array(nodeCount);
  for (let v = 0; v < nodeCount; v++) shuntS[plan.positionOf[v]!] = branches.shuntS[v]!;
  const values = { slotS, shuntS };
  const factor = emptyFactor(plan);
  eliminate(plan, values, factor);

  const reach = reachOf(circuit, branches);
  const { vary, trying } = variationsOf({ circuit, branches, plan, values, factor, reach });
  return {
    ok: true,
    circuit,
    branches,
    plan,
    factor,
    asIs: readVoltages(
      circuit,
      plan,
      factor,
      reach((link) => !links[link]!.open),
    ),
    vary,
    trying,
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
