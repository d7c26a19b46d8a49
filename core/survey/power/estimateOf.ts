import { earthFieldVoltage } from '../../electrical/earth/sourceThroughEarth.ts';
import { weakestPlace } from '../../electrical/effects/weakestPlace.ts';
import type { Voltages } from '../../electrical/voltageResult.ts';
import { fencePlace } from './fencePlace.ts';
import { type Estimate, type FencePlace, notKnown, type Power, type Supply, type SupplyEstimate } from './types.ts';

/**
 * The estimated peak everywhere with these switches open and all others closed. Without them, as the switches normally
 * stand. One or two switches thrown on a large property are answered at once.
 */
export function estimateOf(power: Power, openSwitchIds: ReadonlySet<string> = power.normallyOpen): Estimate {
  const supplies = power.supplies.map((supply): SupplyEstimate => {
    const voltages = voltagesWith(supply, openSwitchIds, power.normallyOpen);
    // A live lead-out alone is no fence.
    const isLive = supply.circuit.spans.some(({ from }) => voltages.reached[from] === 1);
    const found = isLive ? weakestPlace(supply.circuit, voltages) : null;
    const { ohm } = supply.earth;
    return {
      voltages,
      weakest: found && fencePlace(power.project, power.survey, supply, found.place, found.volts),
      earthV: ohm === null ? null : earthFieldVoltage(ohm, voltages.sourceCurrentA),
    };
  });
  const nodeV = Float64Array.from(power.supplyOfNode, (supply, node) => {
    if (supply >= 0) return supplies[supply]!.voltages.nodeVoltageV[node]!;
    return supply === notKnown ? Number.NaN : 0;
  });
  const nodeFed = Uint8Array.from(power.supplyOfNode, (supply, node) => {
    return supply >= 0 ? supplies[supply]!.voltages.reached[node]! : 0;
  });
  const weakest = supplies.reduce<FencePlace | null>((lowest, { weakest: own }) => {
    return own && (!lowest || own.volts < lowest.volts) ? own : lowest;
  }, null);
  return { openSwitchIds, nodeV, nodeFed, supplies, weakest };
}

/** Voltages of one supply with its switches so. */
export function voltagesWith(
  { prepared, linkOfSwitch }: Supply,
  open: ReadonlySet<string>,
  normallyOpen: ReadonlySet<string>,
): Voltages {
  const links = (ids: Iterable<string>, unless: ReadonlySet<string>) =>
    [...ids].flatMap((id) => {
      const link = linkOfSwitch.get(id);
      return link === undefined || unless.has(id) ? [] : [link];
    });
  const opened = links(open, normallyOpen);
  const closed = links(normallyOpen, open);
  const voltages = opened.length + closed.length === 0 ? prepared.asIs : prepared.vary({ open: opened, close: closed });
  // A circuit that can be solved as it stands can be solved with any of its switches thrown: they add no short.
  if (!voltages.ok) throw new Error(voltages.problems[0]?.code ?? 'no answer');
  return voltages;
}
