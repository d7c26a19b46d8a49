import type { FenceCircuit } from '../circuit/circuit.ts';
import { siemens } from '../circuit/siemens.ts';
import { spanTwoPort } from '../circuit/spanTwoPort.ts';

/**
 * The circuit as conductances in siemens, flat. Branch `b` is span `b` for `b < spanCount`, else link
 * `b - spanCount`; an open link has conductance 0, a perfect joint `Infinity`.
 */
export interface Branches {
  readonly spanCount: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly seriesS: Float64Array;
  /** Per span: leakage to earth at each of its two ends. */
  readonly spanShuntS: Float64Array;
  /** Per node: leakage of its spans and its faults together; `Infinity` at a dead short. */
  readonly shuntS: Float64Array;
}

export function branchesOf(circuit: FenceCircuit): Branches {
  const { nodeCount, spans, links, faults } = circuit;
  const spanCount = spans.length;
  const count = spanCount + links.length;
  const from = new Int32Array(count);
  const to = new Int32Array(count);
  const seriesS = new Float64Array(count);
  const spanShuntS = new Float64Array(spanCount);
  const shuntS = new Float64Array(nodeCount);
  const pi = { seriesS: 0, shuntS: 0 };
  for (let i = 0; i < spanCount; i++) {
    const span = spans[i]!;
    spanTwoPort(span, pi);
    from[i] = span.from;
    to[i] = span.to;
    seriesS[i] = pi.seriesS;
    spanShuntS[i] = pi.shuntS;
    shuntS[span.from]! += pi.shuntS;
    shuntS[span.to]! += pi.shuntS;
  }
  for (let i = 0; i < links.length; i++) {
    const link = links[i]!;
    from[spanCount + i] = link.from;
    to[spanCount + i] = link.to;
    seriesS[spanCount + i] = link.open ? 0 : siemens(link.ohm);
  }
  for (const fault of faults) shuntS[fault.node]! += siemens(fault.ohm);
  return { spanCount, from, to, seriesS, spanShuntS, shuntS };
}
