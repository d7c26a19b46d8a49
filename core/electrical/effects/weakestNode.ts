import type { Voltages } from '../voltageResult.ts';

export interface NodeVoltage {
  readonly node: number;
  readonly volts: number;
}

/** The reached node that reads least (the lowest number among equals), of all or of `among`; `null` where none is reached. */
export function weakestNode(voltages: Voltages, among?: readonly number[]): NodeVoltage | null {
  const { nodeVoltageV, reached } = voltages;
  let node = -1;
  let volts = Infinity;
  const see = (v: number): void => {
    if (reached[v] === 1 && nodeVoltageV[v]! < volts) {
      node = v;
      volts = nodeVoltageV[v]!;
    }
  };
  if (among === undefined) for (let v = 0; v < nodeVoltageV.length; v++) see(v);
  else for (const v of among) see(v);
  return node < 0 ? null : { node, volts };
}
