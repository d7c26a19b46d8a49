import fc from 'fast-check';
import type { Fault, FenceCircuit, Link, Span } from '../../core/electrical/circuit/circuit.ts';
import { randomNumbers } from './random.ts';

/**
 * A property-like network of `nodeCount` nodes: main lines with branches (each new node hangs on a recent one), a
 * switch of no or little resistance at about every tenth step, and a share of extra runs that close rings.
 */
export function fenceLikeCircuit(nodeCount: number, seed: number, ringShare = 0.02): FenceCircuit {
  const random = randomNumbers(seed);
  const spans: Span[] = [];
  const links: Link[] = [];
  const faults: Fault[] = [];
  for (let v = 1; v < nodeCount; v++) {
    const back = random() < 0.85 ? 1 : 1 + Math.floor(random() * Math.min(v, 400));
    const u = v - Math.min(v, back);
    if (random() < 0.1) links.push({ from: u, to: v, ohm: random() < 0.5 ? 0 : 0.1, open: false });
    else spans.push(randomSpan(random, u, v));
  }
  for (let r = 0; r < nodeCount * ringShare; r++) {
    const u = Math.floor(random() * nodeCount);
    const v = Math.min(nodeCount - 1, u + 1 + Math.floor(random() * 200));
    if (u !== v) spans.push(randomSpan(random, u, v));
  }
  for (let f = 0; f < nodeCount / 1000; f++) {
    faults.push({ node: Math.floor(random() * nodeCount), ohm: 500 + 9000 * random() });
  }
  return { nodeCount, spans, links, faults, source: { node: 0, openCircuitV: 8500, internalOhm: 150 } };
}

function randomSpan(random: () => number, from: number, to: number): Span {
  return {
    from,
    to,
    lengthM: 20 + 600 * random(),
    ohmPerKm: [8.75, 17.5, 35, 85][Math.floor(random() * 4)]!,
    leakageOhmKm: 8000 * 60 ** random(),
  };
}

interface Extremes {
  /** Runs, links and faults without resistance, runs without leakage or length, loops from a node to itself. */
  readonly extremes: boolean;
}

/** Any circuit at all: several pieces, rings, parallel branches; with `extremes` also every limiting figure. */
export function anyCircuit({ extremes }: Extremes): fc.Arbitrary<FenceCircuit> {
  const figure = (min: number, max: number, ...limits: number[]): fc.Arbitrary<number> => {
    const inside = fc.double({ min: Math.log(min), max: Math.log(max), noNaN: true }).map(Math.exp);
    return extremes && limits.length > 0
      ? fc.oneof({ weight: 5, arbitrary: inside }, fc.constantFrom(...limits))
      : inside;
  };
  return fc.integer({ min: 2, max: 24 }).chain((nodeCount) => {
    const node = fc.integer({ min: 0, max: nodeCount - 1 });
    const span = fc.record({
      from: node,
      to: node,
      lengthM: figure(1, 8000, 0),
      ohmPerKm: figure(2, 200, 0),
      leakageOhmKm: figure(200, 1e6, Infinity),
    });
    const link = fc.record({ from: node, to: node, ohm: figure(0.01, 10, 0), open: fc.boolean() });
    const fault = fc.record({ node, ohm: figure(50, 20000, 0) });
    return fc.record({
      nodeCount: fc.constant(nodeCount),
      spans: fc.array(span, { minLength: 1, maxLength: 40 }),
      links: fc.array(link, { maxLength: 12 }),
      faults: fc.array(fault, { maxLength: 3 }),
      source: fc.record({
        node,
        openCircuitV: fc.double({ min: 1000, max: 12000, noNaN: true }),
        internalOhm: fc.double({ min: 5, max: 800, noNaN: true }),
      }),
    });
  });
}

/** A tree grown from the source at node 0, every node reached: `parentOf[v]` is the next node towards the source. */
export function anyTree(): fc.Arbitrary<{ circuit: FenceCircuit; parentOf: number[] }> {
  return fc.record({ seed: fc.integer(), nodeCount: fc.integer({ min: 2, max: 60 }) }).map(({ seed, nodeCount }) => {
    const random = randomNumbers(seed);
    const parentOf = [0];
    const spans: Span[] = [];
    for (let v = 1; v < nodeCount; v++) {
      const parent = Math.floor(random() * v);
      parentOf.push(parent);
      spans.push(randomSpan(random, v % 2 === 0 ? v : parent, v % 2 === 0 ? parent : v));
    }
    const faults = random() < 0.5 ? [{ node: Math.floor(random() * nodeCount), ohm: 3000 * random() }] : [];
    const source = { node: 0, openCircuitV: 9000, internalOhm: 120 };
    return { circuit: { nodeCount, spans, links: [], faults, source }, parentOf };
  });
}
