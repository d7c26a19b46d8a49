import type { FenceCircuit } from '../circuit/circuit.ts';
import type { PreparedVoltage } from '../preparedVoltage.ts';
import { usualSigmaV, type VoltageReading } from './reading.ts';

/** Readings taken with the same switches, and the network as it stood. */
export interface SwitchState {
  readonly prepared: PreparedVoltage;
  readonly toggled: (circuit: FenceCircuit) => FenceCircuit;
  readonly readings: readonly {
    readonly index: number;
    readonly node: number;
    readonly volts: number;
    readonly sigmaV: number;
  }[];
}

/** The readings sorted by how the switches stood; those at dead places are left out. */
export function switchStates(base: PreparedVoltage, readings: readonly VoltageReading[]): SwitchState[] {
  const byState = new Map<string, number[]>();
  readings.forEach(({ openLinks = [], closedLinks = [] }, i) => {
    const sorted = (links: readonly number[]): string => [...new Set(links)].sort((a, b) => a - b).join();
    const key = `${sorted(openLinks)};${sorted(closedLinks)}`;
    byState.set(key, [...(byState.get(key) ?? []), i]);
  });
  const states: SwitchState[] = [];
  for (const indices of byState.values()) {
    const { openLinks = [], closedLinks = [] } = readings[indices[0]!]!;
    const toggled = (circuit: FenceCircuit): FenceCircuit => {
      if (openLinks.length === 0 && closedLinks.length === 0) return circuit;
      const links = [...circuit.links];
      for (const link of closedLinks) links[link] = { ...links[link]!, open: false };
      for (const link of openLinks) links[link] = { ...links[link]!, open: true };
      return { ...circuit, links };
    };
    const prepared = base.refigured(toggled(base.circuit));
    if (!prepared.ok || !prepared.asIs.ok) continue;
    const { reached } = prepared.asIs;
    const alive = indices.filter((i) => reached[readings[i]!.node] === 1);
    states.push({
      prepared,
      toggled,
      readings: alive.map((index) => {
        const { node, volts, sigmaV = usualSigmaV(volts) } = readings[index]!;
        return { index, node, volts, sigmaV };
      }),
    });
  }
  return states;
}
