import { describe, expect, test } from 'vitest';
import type { FenceCircuit } from '../../core/electrical/circuit/circuit.ts';
import { solveVoltage } from '../../core/electrical/solveVoltage.ts';
import { inEnglish } from '../support/english.ts';
import { referenceData } from './data.ts';

/** Computed by a circuit simulator with each run cut into hundreds of lumps; see the file's own `source`. */
interface VoltageFile {
  readonly cases: readonly {
    readonly id: string;
    readonly description: string;
    readonly nodes: readonly string[];
    readonly spans: readonly {
      from: string;
      to: string;
      length_m: number;
      ohm_per_km: number;
      leakage_ohm_km: number;
    }[];
    readonly links: readonly { from: string; to: string; ohm: number; open?: boolean }[];
    readonly faults: readonly { node: string; ohm: number }[];
    readonly source: { readonly node: string; readonly V0: number; readonly Rs: number };
    readonly expected: {
      readonly node_voltage_V: Readonly<Record<string, number>>;
      readonly source_current_A: number;
      readonly fault_current_A: readonly number[];
    };
    readonly closed_form?: { readonly node_voltage_V: Readonly<Record<string, number>> };
  }[];
}

type Case = VoltageFile['cases'][number];

const { cases } = referenceData<VoltageFile>('fence-voltage.json');

describe.each(cases)('$id: $description', (voltageCase) => {
  const solution = solveVoltage(circuitOf(voltageCase));
  if (!solution.ok) throw new Error(solution.problems.map((p) => inEnglish(p.message)).join(' '));
  const volts = (node: string): number => solution.nodeVoltageV[voltageCase.nodes.indexOf(node)]!;

  test('every node within 1e-5 or 0.01 V of the simulator', () => {
    for (const [node, expected] of Object.entries(voltageCase.expected.node_voltage_V)) {
      expect(Math.abs(volts(node) - expected), node).toBeLessThanOrEqual(Math.max(0.01, 1e-5 * expected));
    }
  });

  test('currents out of the energiser and into the faults', () => {
    const expected = [voltageCase.expected.source_current_A, ...voltageCase.expected.fault_current_A];
    const found = [solution.sourceCurrentA, ...solution.faultA];
    expect(found).toHaveLength(expected.length);
    expected.forEach((ampere, i) => {
      expect(Math.abs(found[i]! - ampere)).toBeLessThanOrEqual(Math.max(1e-6, 1e-5 * ampere));
    });
  });

  const closedForm = voltageCase.closed_form;
  if (!closedForm) return;
  test('every node within 1e-9 of the closed form', () => {
    for (const [node, expected] of Object.entries(closedForm.node_voltage_V)) {
      // The file gives six decimals of a volt, so half a unit of the last one is allowed on top.
      expect(Math.abs(volts(node) - expected), node).toBeLessThanOrEqual(1e-9 * expected + 0.5e-6);
    }
  });
});

function circuitOf({ nodes, spans, links, faults, source }: Case): FenceCircuit {
  const index = new Map(nodes.map((node, i) => [node, i]));
  const at = (node: string): number => index.get(node)!;
  return {
    nodeCount: nodes.length,
    spans: spans.map((span) => ({
      from: at(span.from),
      to: at(span.to),
      lengthM: span.length_m,
      ohmPerKm: span.ohm_per_km,
      leakageOhmKm: span.leakage_ohm_km,
    })),
    links: links.map((link) => ({ from: at(link.from), to: at(link.to), ohm: link.ohm, open: link.open ?? false })),
    faults: faults.map((fault) => ({ node: at(fault.node), ohm: fault.ohm })),
    source: { node: at(source.node), openCircuitV: source.V0, internalOhm: source.Rs },
  };
}
