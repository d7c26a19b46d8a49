import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ohmPerKmOfRoundWire } from '../../../core/electrical/conductors/ohmPerKm.ts';
import { solveVoltage } from '../../../core/electrical/solveVoltage.ts';
import { newEarthField } from '../../../core/model/defaults.ts';
import { put } from '../../../core/model/project.ts';
import type { Thing } from '../../../core/model/things.ts';
import { energisersNeeded } from '../../../core/survey/power/energiserNeeded.ts';
import { estimateOf } from '../../../core/survey/power/estimateOf.ts';
import { improvementsOf } from '../../../core/survey/power/improvements.ts';
import { lineVoltages } from '../../../core/survey/power/lineVoltages.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { powerSentence } from '../../../core/survey/power/powerSentence.ts';
import { profileTo } from '../../../core/survey/power/profile.ts';
import { switchTable } from '../../../core/survey/power/switchTable.ts';
import type { FencePlace } from '../../../core/survey/power/types.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { plainWords } from '../../../core/words/figures.ts';
import {
  at,
  bridgedGateway,
  cutOut,
  drawing,
  endSwitch,
  energiser,
  leadOut,
  line,
  lineSwitch,
  property,
  ring,
} from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';
import { expectFromCatalogue, namesIn } from '../../support/pseudo.ts';
import { randomProject } from '../../support/randomProjects.ts';

/** A place in words, with its preposition. */
function where(place: FencePlace | null): string {
  return place ? plainWords().survey.atSpot({ spot: place.spot }) : '';
}

type Drawn = readonly (Thing | readonly Thing[])[];

function power(...things: Drawn) {
  const project = drawing(...things);
  const made = powerOf(project, surveyOf(project));
  const names = namesIn(project);
  for (const { message, remedy, source } of made.problems) {
    for (const said of [message, remedy, ...(source ? [source] : [])]) expectFromCatalogue(said, names);
  }
  return made;
}

const supply = [
  energiser('E', [0, -100]),
  leadOut('L', 'E', [
    [0, -100],
    [0, 0],
  ]),
];
/** Two live wires of 2.5 mm steel, light growth. */
const lane = line('lane', [
  [0, 0],
  [4000, 0],
]);

/** Resistance of 2.5 mm zinc-coated steel by IEC 60888's 9 % IACS: 0.1916 uohm m. */
const steelOhmPerKm = ohmPerKmOfRoundWire(0.1916, 2.5);
/** By the label, 9000 V open and 6000 V into 500 ohm: 500 x 3000 / 6000. */
const labelOhm = 250;
/** Light growth, 50 kohm km for each of two wires. */
const leakageOhmKm = 25_000;

describe('a lead-out and one line, against the closed form of a leaky line', () => {
  const made = power(supply, lane);
  const estimate = estimateOf(made);
  // V(x) = Vin cosh(k (L - x)) / cosh(k L), input resistance sqrt(r / g) coth(k L); telegrapher's equations at DC.
  const perKm = steelOhmPerKm / 2;
  const k = Math.sqrt(perKm / leakageOhmKm);
  const lengthKm = 4;
  const inputOhm = Math.sqrt(perKm * leakageOhmKm) / Math.tanh(k * lengthKm);
  const leadOutOhm = 0.1 * steelOhmPerKm;
  const sourceA = 9000 / (labelOhm + leadOutOhm + inputOhm);
  const fenceV = sourceA * inputOhm;
  const endV = fenceV / Math.cosh(k * lengthKm);

  it('has the peak at the energiser, at the fence and at its end', () => {
    const [only] = estimate.supplies;
    expect(only!.voltages.sourceCurrentA).toBeCloseTo(sourceA, 6);
    expect(only!.voltages.sourceVoltageV).toBeCloseTo(9000 - labelOhm * sourceA, 3);
    const [row] = lineVoltages(made, estimate);
    expect(row).toMatchObject({ name: 'lane', fed: 'all', belowM: 0 });
    expect(row!.startV).toBeCloseTo(fenceV, 3);
    expect(row!.endV).toBeCloseTo(endV, 3);
  });

  it('names the weakest place', () => {
    expect(estimate.weakest).toMatchObject({ thingId: 'lane' });
    expect(where(estimate.weakest)).toBe('at the end of lane');
    expect(estimate.weakest!.volts).toBeCloseTo(endV, 3);
    const sentence = inEnglish(powerSentence(made, estimate, lineVoltages(made, estimate)));
    expect(sentence).toBe('Weakest place about 8.6 kV at the end of lane (estimate); 4.0 kV holds the stock.');
  });

  it('draws the way there, the inside of the run as well', () => {
    const profile = profileTo(made, estimate, estimate.weakest!)!;
    expect(profile.lengthM).toBeCloseTo(4100, 1);
    expect(profile.points[0]!.volts).toBeCloseTo(estimate.supplies[0]!.voltages.sourceVoltageV, 9);
    expect(profile.points.at(-1)!.volts).toBeCloseTo(endV, 3);
    for (const { distanceM, volts } of profile.points.slice(1)) {
      const x = (distanceM - 100) / 1000;
      const lengthM = profile.lengthM - 100;
      if (x >= 0)
        expect(volts).toBeCloseTo((fenceV * Math.cosh(k * (lengthM / 1000 - x))) / Math.cosh(k * lengthKm), 1);
    }
  });

  it('says what energiser would just do: voltages grow with the open-circuit peak', () => {
    const [needed] = energisersNeeded(made, estimate);
    expect(needed!.openCircuitV).toBeCloseTo((9000 * 4000) / endV, 3);
    expect(needed!.into500OhmV).toBeCloseTo((needed!.openCircuitV * 500) / 750, 6);
    expect(needed!.margin).toBeCloseTo(endV / 4000, 6);
  });

  it('puts the earth stakes in series with the energiser', () => {
    const staked = power(supply, lane, newEarthField('X', 'E', at([5, -100])));
    // Dwight: 100 / (2 pi 1.8) (ln(4 x 1.8 / 0.008) - 1) ohm for one rod; IEEE 142: F = 1.29 for three.
    const oneOhm = (100 / (2 * Math.PI * 1.8)) * (Math.log((4 * 1.8) / 0.008) - 1);
    const earthOhm = (1.29 * oneOhm) / 3;
    const [only] = estimateOf(staked).supplies;
    expect(only!.voltages.sourceCurrentA).toBeCloseTo(9000 / (labelOhm + earthOhm + leadOutOhm + inputOhm), 6);
    expect(only!.earthV).toBeCloseTo(earthOhm * only!.voltages.sourceCurrentA, 6);
    expect(staked.problems).toEqual([]);
    expect(made.problems.map(({ code, weight }) => [code, weight])).toEqual([['noEarthStakes', 'leftOut']]);
  });
});

describe('figures of the drawing', () => {
  const endOf = (...things: Drawn) => estimateOf(power(supply, ...things)).weakest!.volts;

  it('a line’s own growth goes before the property’s, an own figure is for one live wire', () => {
    const heavy = { ...lane, growth: 'heavy' } as const;
    expect(endOf(heavy)).toBeLessThan(endOf(lane));
    expect(endOf(heavy)).toBe(endOf({ ...lane, growth: { leakageOhmKm: 5000 } }));
    const { power: figures } = property();
    expect(endOf(lane, property({ power: { ...figures, growth: 'heavy' } }))).toBe(endOf(heavy));
  });

  it('a crossing’s cable stands in series, and a gateway without one cuts the fence off', () => {
    const copper = { cableId: 'cable-copper-6mm2' };
    const [gate, crossing] = bridgedGateway('G', 'lane', 2000);
    expect(endOf(lane, gate, crossing)).toBeLessThan(endOf(lane, gate, { ...crossing, ...copper }));
    const cut = power(supply, lane, gate);
    const [row] = lineVoltages(cut, estimateOf(cut));
    expect(row).toMatchObject({ fed: 'part', endV: 0, lowestV: 0, belowM: expect.closeTo(1998, 1) });
  });

  it('a user’s own conductor is used by its id', () => {
    const own = { kind: 'conductor', id: 'mine', name: 'Mine', ohmPerKm: steelOhmPerKm, note: '' } as const;
    const project = drawing(supply, lane, own);
    const type = project.fenceType.get('ft-2')!;
    const same = put(project, { ...type, wireId: 'mine' });
    expect(estimateOf(powerOf(same, surveyOf(same))).weakest!.volts).toBeCloseTo(endOf(lane), 9);
  });
});

describe('what is not known', () => {
  const codes = (...things: Drawn) => power(...things).problems.map(({ code }) => code);

  it('is said, and why', () => {
    expect(codes()).toEqual(['noLiveFence']);
    expect(codes(lane)).toEqual(['noEnergiser']);
    expect(codes(lane, energiser('E', [0, -500]))).toEqual(['energiserTouchesNothing']);
    expect(codes(lane, energiser('E', [0, 0], { into500OhmV: 9500 }))).toEqual(['label']);
    expect(codes(supply, { ...lane, typeId: 'gone' })).toEqual(['unknownConductor']);
    expect(
      codes(
        lane,
        energiser('E', [0, 0]),
        bridgedGateway('G', 'lane', 100).map((t) => ({ ...t, cableId: 'gone' }) as Thing),
      ),
    ).toEqual(['unknownConductor']);
  });

  it('two energisers that can feed one fence get no figures, even with an open switch between', () => {
    const both = [energiser('E', [0, 0]), energiser('F', [4000, 0])];
    const apart = power(lane, both, lineSwitch('S', 'lane', 2000, { normally: 'open' }));
    expect(apart.problems).toMatchObject([{ code: 'twoEnergisers', thingIds: ['E', 'F'], weight: 'refused' }]);
    expect(inEnglish(apart.problems[0]!.source)).toMatch(/60335-2-76/);
    const estimate = estimateOf(apart);
    expect(estimate.weakest).toBeNull();
    expect(estimate.nodeV.every(Number.isNaN)).toBe(true);
    expect(inEnglish(powerSentence(apart, estimate, []))).toMatch(/^E and F can feed the same fence/);
  });

  it('two energisers on fences of their own each have theirs', () => {
    const far = line('far', [
      [0, 5000],
      [9000, 5000],
    ]);
    const both = power(lane, far, energiser('E', [0, 0]), energiser('F', [0, 5000]));
    const estimate = estimateOf(both);
    expect(estimate.supplies.map(({ weakest }) => where(weakest))).toEqual(['at the end of lane', 'at the end of far']);
    expect(where(estimate.weakest)).toBe('at the end of far');
  });
});

describe('switches', () => {
  const branch = line('branch', [
    [2000, 0],
    [2000, 3000],
  ]);
  const made = power(
    supply,
    lane,
    branch,
    endSwitch('S', 'branch', 'start'),
    cutOut('T', { on: 'leadOut', leadOutId: 'L' }),
  );

  it('opened, leave what is beyond dead and improvement the rest', () => {
    const before = estimateOf(made);
    const opened = estimateOf(made, new Set(['S']));
    const rows = lineVoltages(made, opened);
    expect(rows.map(({ name, fed }) => [name, fed])).toEqual([
      ['lane', 'all'],
      ['branch', 'none'],
    ]);
    expect(rows[1]).toMatchObject({ startV: 0, endV: 0, lowestV: 0 });
    expect(opened.supplies[0]!.voltages.sourceVoltageV).toBeGreaterThan(before.supplies[0]!.voltages.sourceVoltageV);
    const dead = estimateOf(made, new Set(['T']));
    const stood = { off: ['T'], on: [], allOn: false };
    expect(inEnglish(powerSentence(made, dead, lineVoltages(made, dead), stood))).toBe('With T off: no fence is live.');
  });

  it('each is listed with what throwing it does', () => {
    const table = switchTable(made);
    expect(table.map(({ name, action, fed }) => [name, action, fed])).toEqual([
      ['S', 'open', 'oneSide'],
      ['T', 'open', 'oneSide'],
    ]);
    expect(table[0]!.lengthM).toBeCloseTo(3000, 2);
    expect(table[0]!.weakest!.volts).toBeCloseTo(estimateOf(made, new Set(['S'])).weakest!.volts, 6);
    expect(table[1]!.lengthM).toBeCloseTo(7000, 2);
    expect(table[1]!.weakest).toBeNull();
  });

  it('behind one that stands open is not said to lie in a ring', () => {
    const behind = power(
      supply,
      lane,
      branch,
      endSwitch('S', 'branch', 'start', { normally: 'open' }),
      lineSwitch('U', 'branch', 500),
    );
    expect(switchTable(behind).map(({ name, fed }) => [name, fed])).toEqual([
      ['S', 'oneSide'],
      ['U', 'nowhere'],
    ]);
  });

  it('in a ring, one standing open feeds the far side the long way round', () => {
    const loop = ring('loop', [
      [4000, 0],
      [7000, 0],
      [7000, 3000],
      [4000, 3000],
    ]);
    const closed = power(supply, lane, loop, lineSwitch('S', 'loop', 500));
    const [row] = switchTable(closed);
    expect(row).toMatchObject({ action: 'open', fed: 'bothSides', lengthM: 0 });
    expect(row!.weakest!.volts).toBeLessThan(estimateOf(closed).weakest!.volts);
    const open = power(supply, lane, loop, lineSwitch('S', 'loop', 500, { normally: 'open' }));
    expect(switchTable(open)[0]).toMatchObject({ action: 'close', fed: 'bothSides' });
    expect(estimateOf(open, new Set()).weakest!.volts).toBeCloseTo(estimateOf(closed).weakest!.volts, 6);
    // The weakest place of the closed ring is inside it, where both ways meet.
    expect(estimateOf(closed).weakest!.where.on).toBe('run');
    expect(where(estimateOf(closed).weakest)).toMatch(/^on loop, 6\.\d+ km from its start$/);
  });
});

describe('what would improvement the weakest place', () => {
  const branch = line(
    'branch',
    [
      [200, 0],
      [200, 500],
      [3800, 500],
    ],
    { growth: 'heavy' },
  );
  const made = power(supply, lane, branch, endSwitch('S', 'branch', 'start'), newEarthField('X', 'E', at([5, -100])));
  const { farEnd, improvements } = improvementsOf(made)!;

  it('starts from the weakest place and puts the best first', () => {
    expect(farEnd.volts).toBeCloseTo(estimateOf(made).weakest!.volts, 9);
    const gains = improvements.map(({ gainV }) => gainV);
    expect(gains).toEqual([...gains].sort((a, b) => b - a));
    expect(improvements.map(({ key }) => key).sort()).toEqual(
      ['earth', 'energiser', 'growth', 'growthWorst', 'leadOut', 'ring', 'wires', 'wiresOnWay'].sort(),
    );
  });

  it('gives what a drawing with the change made gives', () => {
    const gainOf = (key: string) => improvements.find((improvement) => improvement.key === key)!.farEndV;
    const redrawn = (...things: Drawn) => estimateOf(power(...things)).weakest!.volts;
    const rest = [endSwitch('S', 'branch', 'start')];
    const earth = newEarthField('X', 'E', at([5, -100]));
    expect(gainOf('earth')).toBeCloseTo(redrawn(supply, lane, branch, rest, { ...earth, rods: 6 }), 6);
    const clean = { growth: 'clean' } as const;
    expect(gainOf('growth')).toBeCloseTo(
      redrawn(supply, { ...lane, ...clean }, { ...branch, ...clean }, rest, earth),
      6,
    );
    const [, cable] = supply;
    const copper = { ...cable!, cableId: 'cable-copper-2.5' } as Thing;
    expect(gainOf('leadOut')).toBeCloseTo(redrawn(supply[0]!, copper, lane, branch, rest, earth), 6);
    expect(inEnglish(improvements.find(({ key }) => key === 'leadOut')!.name)).toBe(
      'Heavier lead-out: fence lead-out cable, copper core 2.5 mm, rated 10 kV or more',
    );
    const three = drawing(supply, lane, branch, rest, earth);
    const wired = put(three, { ...three.fenceType.get('ft-2')!, liveWires: 3 });
    expect(gainOf('wires')).toBeCloseTo(estimateOf(powerOf(wired, surveyOf(wired))).weakest!.volts, 6);
  });
});

describe('any drawing', () => {
  it('agrees with a solve from scratch, and keeps the laws of a passive network', () => {
    fc.assert(
      fc.property(randomProject, fc.array(fc.boolean(), { maxLength: 6 }), (project, thrown) => {
        const made = powerOf(project, surveyOf(project));
        const ids = [...project.switch.keys()].filter((_, i) => thrown[i] === true);
        const estimate = estimateOf(made, new Set(ids));
        made.supplies.forEach((each, index) => {
          const links = each.circuit.links.map((link, l) => {
            const edge = made.survey.network.edges[each.edgeOfLink[l]!]!;
            return edge.kind === 'switch' ? { ...link, open: ids.includes(edge.switchId) } : link;
          });
          const fresh = solveVoltage({ ...each.circuit, links });
          if (!fresh.ok) throw new Error('refused');
          const { voltages } = estimate.supplies[index]!;
          expect(fresh.imbalanceA).toBeLessThan(1e-6);
          for (let node = 0; node < each.circuit.nodeCount; node++) {
            if (made.supplyOfNode[node] !== index) continue;
            expect(estimate.nodeV[node]).toBeCloseTo(fresh.nodeVoltageV[node]!, 6);
            expect(estimate.nodeFed[node]).toBe(fresh.reached[node]);
            expect(estimate.nodeV[node]).toBeLessThanOrEqual(voltages.sourceVoltageV);
            if (fresh.reached[node] === 0) expect(estimate.nodeV[node]).toBe(0);
          }
        });
        const lines = lineVoltages(made, estimate);
        for (const { lowestV, startV, endV, belowM } of lines) {
          if (Number.isNaN(lowestV)) continue;
          expect(lowestV).toBeLessThanOrEqual(Math.min(startV, endV) + 1e-9);
          expect(belowM).toBeGreaterThanOrEqual(0);
        }
        if (estimate.weakest) {
          const profile = profileTo(made, estimate, estimate.weakest);
          expect(profile!.points.at(-1)!.volts).toBeCloseTo(estimate.weakest.volts, 6);
          expect(profile!.points.at(-1)!.distanceM).toBeCloseTo(profile!.lengthM, 6);
        }
        const table = switchTable(made);
        expect(new Set(table.map(({ switchId }) => switchId)).size).toBe(table.length);
      }),
      { seed: 11, numRuns: 150 },
    );
  });
});
