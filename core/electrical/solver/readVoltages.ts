import { message } from '../../words/message.ts';
import type { FenceCircuit } from '../circuit/circuit.ts';
import type { VoltageRefusal, Voltages } from '../voltageResult.ts';
import type { Factor } from './factor.ts';
import type { FactorPlan } from './factorPlan.ts';
import { voltagesFrom } from './voltages.ts';

/** The answer that an eliminated network holds, `reached` being what its closed links reach. */
export function readVoltages(
  circuit: FenceCircuit,
  plan: FactorPlan,
  factor: Factor,
  reached: Uint8Array,
): Voltages | VoltageRefusal {
  const source = readSource(circuit, factor);
  if (!source.ok) return source;
  return { ...source, nodeVoltageV: voltagesFrom(plan, factor, source.sourceVoltageV), reached };
}

/** What the energiser gives into an eliminated network. */
export type SourceReading = Omit<Voltages, 'nodeVoltageV' | 'reached'>;

export function readSource(circuit: FenceCircuit, factor: Factor): SourceReading | VoltageRefusal {
  const { openCircuitV, internalOhm } = circuit.source;
  const fenceS = factor.shuntS[circuit.nodeCount - 1]!;
  const shorted = fenceS === Infinity;
  if (shorted && internalOhm === 0 && openCircuitV > 0) return shortAcrossSource();
  const sourceVoltageV = shorted ? 0 : openCircuitV / (1 + internalOhm * fenceS);
  const shortedA = openCircuitV === 0 ? 0 : openCircuitV / internalOhm;
  return {
    ok: true,
    sourceVoltageV,
    sourceCurrentA: shorted ? shortedA : fenceS * sourceVoltageV,
    fenceOhm: 1 / fenceS,
  };
}

function shortAcrossSource(): VoltageRefusal {
  return {
    ok: false,
    problems: [
      {
        code: 'short-across-source',
        where: { kind: 'source', index: 0 },
        message: message('power.circuit.shortAcrossSource'),
      },
    ],
  };
}
