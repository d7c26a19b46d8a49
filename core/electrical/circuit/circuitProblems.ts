import type { FenceCircuit } from './circuit.ts';

/** Why a circuit cannot be solved: what is wrong, where, and what to do about it. */
export interface CircuitProblem {
  readonly code: 'bad-node' | 'bad-figure' | 'short-across-source' | 'out-of-range';
  readonly where: {
    readonly kind: 'circuit' | 'span' | 'link' | 'fault' | 'source';
    /** Index in the circuit's own list; 0 for the circuit and the source. */
    readonly index: number;
  };
  readonly message: string;
}

/** A run's whole resistance (ohm) and leakage (siemens) stay below this, far beyond any fence, so nothing overflows. */
const LARGEST = 1e15;

/** The first of each kind of trouble is enough to act on; a wrong unit would otherwise give thousands. */
const MOST_PROBLEMS = 20;

/** Everything in the figures that makes no sense, at most {@link MOST_PROBLEMS}; empty when the circuit can be solved. */
export function circuitProblems(circuit: FenceCircuit): CircuitProblem[] {
  const { nodeCount, spans, links, faults, source } = circuit;
  const problems: CircuitProblem[] = [];
  const report = (
    code: CircuitProblem['code'],
    kind: CircuitProblem['where']['kind'],
    index: number,
    message: string,
  ): void => {
    if (problems.length < MOST_PROBLEMS) problems.push({ code, where: { kind, index }, message });
  };
  const isNode = (node: number): boolean => node >= 0 && node < nodeCount && Number.isInteger(node);

  if (!Number.isInteger(nodeCount) || nodeCount < 1) {
    report('bad-figure', 'circuit', 0, `A network needs at least one node; it says ${nodeCount}.`);
    return problems;
  }
  for (let i = 0; i < spans.length; i++) {
    const { from, to, lengthM, ohmPerKm, leakageOhmKm } = spans[i]!;
    if (!isNode(from) || !isNode(to)) {
      report('bad-node', 'span', i, `Run ${i} joins nodes ${from} and ${to}; nodes go from 0 to ${nodeCount - 1}.`);
    }
    if (!(lengthM >= 0 && lengthM < Infinity)) {
      report('bad-figure', 'span', i, `Run ${i} is ${lengthM} m long; give a length of 0 m or more.`);
    }
    if (!(ohmPerKm >= 0 && ohmPerKm < Infinity)) {
      report(
        'bad-figure',
        'span',
        i,
        `Run ${i} has ${ohmPerKm} ohm/km; give 0 or more, or leave the run out if it is cut.`,
      );
    }
    if (!(leakageOhmKm > 0)) {
      report(
        'bad-figure',
        'span',
        i,
        `Run ${i} leaks through ${leakageOhmKm} ohm km; give a figure above 0, or put a fault there.`,
      );
    }
    if (lengthM * ohmPerKm > 1000 * LARGEST || lengthM / leakageOhmKm > 1000 * LARGEST) {
      report(
        'out-of-range',
        'span',
        i,
        `Run ${i} has figures no fence can have (${lengthM} m, ${ohmPerKm} ohm/km, ${leakageOhmKm} ohm km); check their units.`,
      );
    }
  }
  for (let i = 0; i < links.length; i++) {
    const { from, to, ohm } = links[i]!;
    if (!isNode(from) || !isNode(to)) {
      report('bad-node', 'link', i, `Link ${i} joins nodes ${from} and ${to}; nodes go from 0 to ${nodeCount - 1}.`);
    }
    if (!(ohm >= 0 && ohm < Infinity)) {
      report('bad-figure', 'link', i, `Link ${i} has ${ohm} ohm; give 0 or more, or mark it open.`);
    }
  }
  for (let i = 0; i < faults.length; i++) {
    const { node, ohm } = faults[i]!;
    if (!isNode(node))
      report('bad-node', 'fault', i, `Fault ${i} is at node ${node}; nodes go from 0 to ${nodeCount - 1}.`);
    if (!(ohm >= 0)) report('bad-figure', 'fault', i, `Fault ${i} has ${ohm} ohm; give 0 (a dead short) or more.`);
  }
  if (!isNode(source.node)) {
    report('bad-node', 'source', 0, `The energiser is at node ${source.node}; nodes go from 0 to ${nodeCount - 1}.`);
  }
  if (!(source.openCircuitV >= 0 && source.openCircuitV < Infinity)) {
    report(
      'bad-figure',
      'source',
      0,
      `The energiser gives ${source.openCircuitV} V on open circuit; give 0 V or more.`,
    );
  }
  if (!(source.internalOhm >= 0 && source.internalOhm < Infinity)) {
    report('bad-figure', 'source', 0, `The energiser has ${source.internalOhm} ohm inside; give 0 or more.`);
  }
  return problems;
}
