import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FenceCircuit } from '../../../core/electrical/circuit/circuit.ts';
import {
  betterEarth,
  lessGrowth,
  moreLiveWires,
  otherConductor,
  otherEnergiser,
} from '../../../core/electrical/effects/changes.ts';
import { type CircuitChange, withChange } from '../../../core/electrical/effects/circuitChange.ts';
import { effectsOf } from '../../../core/electrical/effects/effectsOf.ts';
import { switchEffects } from '../../../core/electrical/effects/switchEffects.ts';
import { ThrowSearch } from '../../../core/electrical/effects/throwSearch.ts';
import { type CircuitPlace, voltageAt, weakestPlace } from '../../../core/electrical/effects/weakestPlace.ts';
import { energiserInternalOhm } from '../../../core/electrical/energiser/internalOhm.ts';
import { prepareVoltage } from '../../../core/electrical/preparedVoltage.ts';
import { solveVoltage } from '../../../core/electrical/solveVoltage.ts';
import { anyCircuit, fenceLikeCircuit } from '../../support/randomElectrical.ts';

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
  const changes: CircuitChange[] = [
    moreLiveWires(circuit, [2], 1, 2),
    otherConductor([0], 6.9),
    { links: [{ link: 1, open: false }] },
    lessGrowth(circuit, [1, 2], 0.1),
    otherEnergiser({ openCircuitV: 9000, into500OhmV: 7500 }, 20),
    betterEarth(circuit, 60, 20),
  ];
  const result = effectsOf(prepared(circuit), changes);
  if (!result.ok) throw new Error('refused');

  test('the far end is the end of the line', () => {
    expect(result.farEnd.place).toEqual({ on: 'node', node: 4 });
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
});

describe('throwing each switch', () => {
  test('opening the only way there kills what is beyond; closing a ring kills nothing', () => {
    const [line, ring] = [...switchEffects(prepared(circuit))];
    expect(line).toMatchObject({ link: 0, action: 'open', nodes: 2, lengthM: 4000 });
    expect(line!.weakest!.place).toEqual({ on: 'node', node: 2 });
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
      expect(effect.weakest!.volts).toBeCloseTo(weakestPlace(large, fresh)!.volts, 6);
      expect(effect.sourceCurrentA).toBeCloseTo(fresh.sourceCurrentA, 8);
    }
  });
});

describe('throwing each switch, beside reading every node', () => {
  /** Every throw by the long way; returns how many were compared. */
  function compareAll(of: FenceCircuit): number {
    const ready = prepareVoltage(of);
    if (!ready.ok || !ready.asIs.ok) return 0;
    const { asIs } = ready;
    const effects = [...switchEffects(ready)];
    const found = new Map(effects.map((effect) => [effect.link, effect]));
    of.links.forEach(({ open }, link) => {
      const after = ready.vary({ [open ? 'close' : 'open']: [link] });
      expect(found.has(link)).toBe(after.ok);
      if (!after.ok) return;
      const changed = (node: number) => asIs.reached[node] !== after.reached[node];
      const { lengthM, ...effect } = found.get(link)!;
      expect(effect).toEqual({
        link,
        action: open ? 'close' : 'open',
        nodes: after.reached.reduce((sum, _, node) => sum + Number(changed(node)), 0),
        runsReached: of.spans.filter(({ from }) => after.reached[from] === 1).length,
        weakest: weakestPlace(of, after),
        sourceVoltageV: after.sourceVoltageV,
        sourceCurrentA: after.sourceCurrentA,
      });
      expect(lengthM).toBeCloseTo(
        of.spans.reduce((sum, span) => (changed(span.from) ? sum + span.lengthM : sum), 0),
        8,
      );
    });
    return effects.length;
  }

  test.each([0.001, 0.02, 0.2, 0.6])('is the same to the last bit on a large network, rings %f', (rings) => {
    const large = fenceLikeCircuit(1500, 8, rings);
    expect(compareAll(large)).toBeGreaterThan(100);
    // Some stand open, so that parts are dead or hang on one side.
    const links = large.links.map((link, i) => ({ ...link, open: i % 7 === 0 }));
    expect(compareAll({ ...large, links, faults: [] })).toBeGreaterThan(100);
  });

  test.each([false, true])('is the same to the last bit on any circuit, extremes %o', (extremes) => {
    let compared = 0;
    fc.assert(
      fc.property(anyCircuit({ extremes }), (any) => {
        compared += compareAll(any);
      }),
      { seed: 78, numRuns: 1500 },
    );
    expect(compared).toBeGreaterThan(3000);
  });

  test('reads any place as it is then', () => {
    const large = fenceLikeCircuit(800, 3, 0.1);
    const ready = prepared(large);
    const search = new ThrowSearch(ready);
    const places: CircuitPlace[] = [
      { on: 'node', node: 799 },
      { on: 'span', span: 400, distanceM: 7 },
    ];
    for (const [link, { open }] of large.links.entries()) {
      const after = ready.vary({ [open ? 'close' : 'open']: [link] });
      if (!after.ok) throw new Error('refused');
      expect(search.throwLink(link, places)!.volts).toEqual(places.map((place) => voltageAt(large, after, place)));
    }
  });
});

describe('the weakest place', () => {
  /** A loop of wire from the source's node back to it: by symmetry it reads least halfway, V0 / cosh(kL/2). */
  const loop: FenceCircuit = {
    nodeCount: 1,
    spans: [{ from: 0, to: 0, lengthM: 8000, ohmPerKm: 40, leakageOhmKm: 2000 }],
    links: [],
    faults: [],
    source: { node: 0, openCircuitV: 6000, internalOhm: 0 },
  };

  test('of a ring is inside it, halfway round', () => {
    const { asIs } = prepared(loop);
    if (!asIs.ok) throw new Error('refused');
    const weakest = weakestPlace(loop, asIs)!;
    expect(weakest.place).toMatchObject({ on: 'span', span: 0 });
    expect(weakest.place.on === 'span' && weakest.place.distanceM).toBeCloseTo(4000, 6);
    expect(weakest.volts).toBeCloseTo(6000 / Math.cosh(Math.sqrt(40 / 2000) * 4), 6);
    expect(voltageAt(loop, asIs, weakest.place)).toBeCloseTo(weakest.volts, 6);
  });

  test('is no higher than anything along any run', () => {
    const large = fenceLikeCircuit(300, 5, 0.2);
    const { asIs } = prepared(large);
    if (!asIs.ok) throw new Error('refused');
    const { volts } = weakestPlace(large, asIs)!;
    large.spans.forEach((span, i) => {
      if (asIs.reached[span.from] !== 1) return;
      for (let part = 0; part <= 20; part++) {
        const place = { on: 'span', span: i, distanceM: (part / 20) * span.lengthM } as const;
        expect(voltageAt(large, asIs, place)).toBeGreaterThanOrEqual(volts * (1 - 1e-9));
      }
    });
  });

  test('of a fence that nothing reaches is nowhere', () => {
    const { asIs } = prepared({ ...circuit, links: circuit.links.map((link) => ({ ...link, open: true })) });
    expect(asIs.ok && weakestPlace(circuit, { ...asIs, reached: new Uint8Array(5) })).toBeNull();
  });
});
