import { type Message, message } from '../../words/message.ts';
import type { FenceCircuit } from './circuit.ts';

/** Why a circuit cannot be solved: what is wrong, where, and what to do about it. */
export interface CircuitProblem {
  readonly code: 'bad-node' | 'bad-figure' | 'short-across-source' | 'out-of-range';
  readonly where: {
    readonly kind: 'circuit' | 'span' | 'link' | 'fault' | 'source';
    /** Index in the circuit's own list; 0 for the circuit and the source. */
    readonly index: number;
  };
  readonly message: Message;
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
    message: Message,
  ): void => {
    if (problems.length < MOST_PROBLEMS) problems.push({ code, where: { kind, index }, message });
  };
  const mostNode = nodeCount - 1;
  const joins = (index: number, from: number, to: number) => ({ index, from: `${from}`, to: `${to}`, mostNode });
  const isNode = (node: number): boolean => node >= 0 && node < nodeCount && Number.isInteger(node);

  if (!Number.isInteger(nodeCount) || nodeCount < 1) {
    report('bad-figure', 'circuit', 0, message('power.circuit.nodeCount', { count: `${nodeCount}` }));
    return problems;
  }
  for (let i = 0; i < spans.length; i++) {
    const { from, to, lengthM, ohmPerKm, leakageOhmKm } = spans[i]!;
    if (!isNode(from) || !isNode(to)) {
      report('bad-node', 'span', i, message('power.circuit.spanNodes', joins(i, from, to)));
    }
    if (!(lengthM >= 0 && lengthM < Infinity)) {
      report('bad-figure', 'span', i, message('power.circuit.spanLength', { index: i, lengthM: `${lengthM}` }));
    }
    if (!(ohmPerKm >= 0 && ohmPerKm < Infinity)) {
      report('bad-figure', 'span', i, message('power.circuit.spanOhm', { index: i, ohmPerKm: `${ohmPerKm}` }));
    }
    if (!(leakageOhmKm > 0)) {
      report('bad-figure', 'span', i, message('power.circuit.spanLeakage', { index: i, ohmKm: `${leakageOhmKm}` }));
    }
    if (lengthM * ohmPerKm > 1000 * LARGEST || lengthM / leakageOhmKm > 1000 * LARGEST) {
      report(
        'out-of-range',
        'span',
        i,
        message('power.circuit.spanRange', {
          index: i,
          lengthM: `${lengthM}`,
          ohmPerKm: `${ohmPerKm}`,
          ohmKm: `${leakageOhmKm}`,
        }),
      );
    }
  }
  for (let i = 0; i < links.length; i++) {
    const { from, to, ohm } = links[i]!;
    if (!isNode(from) || !isNode(to)) {
      report('bad-node', 'link', i, message('power.circuit.linkNodes', joins(i, from, to)));
    }
    if (!(ohm >= 0 && ohm < Infinity)) {
      report('bad-figure', 'link', i, message('power.circuit.linkOhm', { index: i, ohm: `${ohm}` }));
    }
  }
  for (let i = 0; i < faults.length; i++) {
    const { node, ohm } = faults[i]!;
    if (!isNode(node))
      report('bad-node', 'fault', i, message('power.circuit.faultNode', { index: i, node: `${node}`, mostNode }));
    if (!(ohm >= 0)) report('bad-figure', 'fault', i, message('power.circuit.faultOhm', { index: i, ohm: `${ohm}` }));
  }
  if (!isNode(source.node)) {
    report('bad-node', 'source', 0, message('power.circuit.sourceNode', { node: `${source.node}`, mostNode }));
  }
  if (!(source.openCircuitV >= 0 && source.openCircuitV < Infinity)) {
    report('bad-figure', 'source', 0, message('power.circuit.sourceVolts', { volts: `${source.openCircuitV}` }));
  }
  if (!(source.internalOhm >= 0 && source.internalOhm < Infinity)) {
    report('bad-figure', 'source', 0, message('power.circuit.sourceOhm', { ohm: `${source.internalOhm}` }));
  }
  return problems;
}
