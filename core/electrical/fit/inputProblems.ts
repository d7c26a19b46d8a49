import { type Message, message } from '../../words/message.ts';
import type { FenceCircuit } from '../circuit/circuit.ts';
import type { LeakageSection } from './leakageModel.ts';
import type { VoltageReading } from './reading.ts';

/** What is wrong with a fit's sections and readings, one sentence each. */
export function inputProblems(
  circuit: FenceCircuit,
  sections: readonly LeakageSection[],
  readings: readonly VoltageReading[],
): Message[] {
  const messages: Message[] = [];
  if (sections.length === 0) messages.push(message('power.fit.noSection'));
  const taken = new Map<number, string>();
  for (const { name, spans } of sections) {
    for (const i of spans) {
      if (circuit.spans[i] === undefined) messages.push(message('power.fit.unknownRun', { name, index: `${i}` }));
      else if (taken.has(i))
        messages.push(message('power.fit.runTwice', { index: i, name, other: taken.get(i) ?? '' }));
      taken.set(i, name);
    }
    const leaks = spans.some((i) => (circuit.spans[i]?.lengthM ?? 0) > 0 && circuit.spans[i]!.leakageOhmKm < Infinity);
    if (!leaks) messages.push(message('power.fit.noLeak', { name }));
  }
  readings.forEach(({ node, volts, sigmaV, openLinks = [], closedLinks = [] }, i) => {
    if (!(Number.isInteger(node) && node >= 0 && node < circuit.nodeCount)) {
      messages.push(message('power.fit.unknownNode', { index: i, node: `${node}` }));
    }
    if (!(volts >= 0 && volts < Infinity)) messages.push(message('power.fit.volts', { index: i, volts: `${volts}` }));
    if (sigmaV !== undefined && !(sigmaV > 0 && sigmaV < Infinity)) {
      messages.push(message('power.fit.sigma', { index: i, volts: `${sigmaV}` }));
    }
    for (const link of [...openLinks, ...closedLinks]) {
      if (circuit.links[link] === undefined)
        messages.push(message('power.fit.unknownSwitch', { index: i, link: `${link}` }));
    }
  });
  return messages;
}
