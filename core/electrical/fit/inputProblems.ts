import type { FenceCircuit } from '../circuit/circuit.ts';
import type { LeakageSection } from './leakageModel.ts';
import type { VoltageReading } from './reading.ts';

/** What is wrong with a fit's sections and readings, one sentence each. */
export function inputProblems(
  circuit: FenceCircuit,
  sections: readonly LeakageSection[],
  readings: readonly VoltageReading[],
): string[] {
  const messages: string[] = [];
  if (sections.length === 0) messages.push('There is no section to fit.');
  const taken = new Map<number, string>();
  for (const { name, spans } of sections) {
    for (const i of spans) {
      if (circuit.spans[i] === undefined) messages.push(`${name} names run ${i}, which is not in the network.`);
      else if (taken.has(i)) messages.push(`Run ${i} is in ${taken.get(i)} and in ${name}; put it in one of them.`);
      taken.set(i, name);
    }
    const leaks = spans.some((i) => (circuit.spans[i]?.lengthM ?? 0) > 0 && circuit.spans[i]!.leakageOhmKm < Infinity);
    if (!leaks) messages.push(`${name} has no run that leaks; give its fence a growth class.`);
  }
  readings.forEach(({ node, volts, sigmaV, openLinks = [], closedLinks = [] }, i) => {
    if (!(Number.isInteger(node) && node >= 0 && node < circuit.nodeCount)) {
      messages.push(`Reading ${i} is at node ${node}, which is not in the network.`);
    }
    if (!(volts >= 0 && volts < Infinity)) messages.push(`Reading ${i} is ${volts} V; enter 0 V or more.`);
    if (sigmaV !== undefined && !(sigmaV > 0 && sigmaV < Infinity)) {
      messages.push(`Reading ${i} has an error of ${sigmaV} V; enter more than 0 V.`);
    }
    for (const link of [...openLinks, ...closedLinks]) {
      if (circuit.links[link] === undefined)
        messages.push(`Reading ${i} names switch ${link}, which is not in the network.`);
    }
  });
  return messages;
}
