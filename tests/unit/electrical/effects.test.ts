import { describe, expect, test } from 'vitest';
import type { FenceCircuit } from '../../../core/electrical/circuit/circuit.ts';
import {
  betterEarth,
  lessGrowth,
  moreLiveWires,
  otherConductor,
  otherEnergiser,
  switchClosed,
} from '../../../core/electrical/effects/changes.ts';
import { withChange } from '../../../core/electrical/effects/circuitChange.ts';
import { effectsOf } from '../../../core/electrical/effects/effectsOf.ts';
import { switchEffects } from '../../../core/electrical/effects/switchEffects.ts';
import { weakestNode } from '../../../core/electrical/effects/weakestNode.ts';
import { energiserInternalOhm } from '../../../core/electrical/energiser/internalOhm.ts';
import { prepareVoltage } from '../../../core/electrical/preparedVoltage.ts';
import { solveVoltage } from '../../../core/electrical/solveVoltage.ts';
import { fenceLikeCircuit } from '../../support/randomElectrical.ts';

/** Lead-out 0-1, a line 1-2-3-4 with a switch 2-3, and an open ring switch 4-1. */
const circuit: FenceCircuit = {
  nodeCount: 5,
  spans: [
    { from: 0, to: 1, lengthM: 150, ohmPerKm: 39, leakageOhmKm: Infinity },
    { from: 1, to: 2, lengthM: 3000, ohmPerKm: 19.5, leakageOhmKm: 10_000 },
    { from: 3, to: 4, lengthM: 4000, ohmPerKm: 39, leakageOhmKm: 20_000 },
  ],
  links: [
    { from: 2, to: 3, ohm: 0, open: false },
    { from: 4, to: 1, ohm: 0, open: true },
  ],
  faults: [],
  source: { node: 0, openCircuitV: 8000, internalOhm: 180 },
};

function prepared(of: FenceCircuit) {
  const result = prepareVoltage(of);
  if (!result.ok) throw new Error('refused');
  return result;
}

describe('what would lift the far end', () => {
  const changes = [
    moreLiveWires(circuit, [2], 1, 2),
    otherConductor([0], 6.9, 'Copper lead-out'),
    switchClosed(1, 'Ring closed'),
    lessGrowth(circuit, [1, 2], 0.1),
    otherEnergiser({ openCircuitV: 9000, into500OhmV: 7500 }, 20, 'Larger energiser'),
    betterEarth(circuit, 60, 20),
  ];
  const result = effectsOf(prepared(circuit), changes);
  if (!result.ok) throw new Error('refused');

  test('the far end is the end of the line', () => {
    expect(result.farEnd.node).toBe(4);
    expect(result.farEnd.volts).toBe(result.asIs.nodeVoltageV[4]);
  });

  test('each effect is what a circuit with the change made, solved from scratch, gives', () => {
    result.effects.forEach((effect, i) => {
      const fresh = solveVoltage(withChange(circuit, changes[i]!));
      if (!fresh.ok) throw new Error('refused');
      expect(effect.farEndV).toBeCloseTo(fresh.nodeVoltageV[4]!, 8);
      expect(effect.farEndGainV).toBeCloseTo(fresh.nodeVoltageV[4]! - result.farEnd.volts, 8);
      expect(effect.sourceCurrentA).toBeCloseTo(fresh.sourceCurrentA, 10);
    });
  });

  test('every one of these lifts it, except the second wire, which here leaks more than it carries', () => {
    const gains = result.effects.map((effect) => effect.farEndGainV);
    expect(gains[0]).toBeLessThan(0);
    for (const gain of gains.slice(1)) expect(gain).toBeGreaterThan(0);
  });

  test('the changes’ figures', () => {
    expect(changes[0]!.spans).toEqual([{ span: 2, ohmPerKm: 19.5, leakageOhmKm: 10_000 }]);
    expect(changes[3]!.spans![0]!.leakageOhmKm).toBeCloseTo(100_000, 6);
    expect(changes[4]!.source!.internalOhm).toBe(energiserInternalOhm(9000, 7500) + 20);
    expect(changes[5]!.source!.internalOhm).toBe(140);
    expect(lessGrowth(circuit, [1], 0).spans![0]!.leakageOhmKm).toBe(Infinity);
  });

  test('the weakest can be looked for among some nodes only', () => {
    const among = effectsOf(prepared(circuit), [], [1, 2]);
    expect(among.ok && among.farEnd.node).toBe(2);
    expect(weakestNode(result.asIs, [])).toBeNull();
  });
});

describe('throwing each switch', () => {
  test('opening the only way there kills what is beyond; closing a ring kills nothing', () => {
    const [line, ring] = switchEffects(prepared(circuit));
    expect(line).toMatchObject({ link: 0, action: 'open', nodes: 2, lengthM: 4000 });
    expect(line!.weakest!.node).toBe(2);
    expect(ring).toMatchObject({ link: 1, action: 'close', nodes: 0, lengthM: 0 });
  });

  test('on a large network each is as solved from scratch', () => {
    const large = fenceLikeCircuit(2000, 21, 0.03);
    const ready = prepared(large);
    const asked = large.links.map((_, i) => i).filter((i) => i % 23 === 0);
    for (const effect of switchEffects(ready, asked)) {
      const links = large.links.map((l, i) => (i === effect.link ? { ...l, open: true } : l));
      const fresh = solveVoltage({ ...large, links });
      if (!fresh.ok || !ready.asIs.ok) throw new Error('refused');
      const dead = fresh.reached.reduce((sum, r) => sum + 1 - r, 0);
      expect(effect.nodes).toBe(dead);
      expect(effect.weakest!.volts).toBeCloseTo(weakestNode(fresh)!.volts, 6);
      expect(effect.sourceCurrentA).toBeCloseTo(fresh.sourceCurrentA, 8);
    }
  });
});
