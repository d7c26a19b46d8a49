import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Project, put } from '../../../core/model/project.ts';
import type { Thing } from '../../../core/model/things.ts';
import { switchCandidates } from '../../../core/survey/candidates.ts';
import { dividePlan } from '../../../core/survey/dividePlan.ts';
import { overLimitInWords, overLimitStretches } from '../../../core/survey/overLimit.ts';
import { divideSentence, proofInWords, settledInWords } from '../../../core/survey/sentences.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { message } from '../../../core/words/message.ts';
import {
  addedPlace,
  bridgedGateway,
  cutOut,
  drawing,
  endSwitch,
  energiser,
  gateSwitch,
  gateway,
  leadOut,
  line,
  lineSwitch,
  property,
  rule,
  strainer,
} from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';
import { randomDrawing } from '../../support/randomDrawing.ts';

const limit = (maxSectionM: number, maxGateways: number | null = null) =>
  property({ divide: { ...property().divide, maxSectionM, maxGateways } });
const fed = [
  energiser('E', [0, -20]),
  leadOut('L', 'E', [
    [0, -20],
    [0, 0],
  ]),
];
const lane = line('lane', [
  [0, 0],
  [2000, 0],
]);

const candidates = (...things: readonly (Thing | readonly Thing[])[]) => {
  const project = drawing(...things);
  return switchCandidates(project, surveyOf(project));
};
const keys = (...things: readonly (Thing | readonly Thing[])[]) => candidates(...things).map(({ key }) => key);
const planOf = (project: Project) => dividePlan(project, surveyOf(project))!;

describe('places where a switch could go', () => {
  it('are at the post from which each crossing is fed', () => {
    const found = candidates(
      fed,
      lane,
      bridgedGateway('G', 'lane', 500),
      line('b', [
        [1500, 400],
        [1500, 0],
      ]),
      bridgedGateway('H', 'b', 100),
    );
    expect(found.filter(({ why }) => why === 'gateway').map(({ key, place }) => [key, place])).toEqual([
      ['gateway:G', { on: 'gateway', gatewayId: 'G', post: 'start' }],
      ['gateway:H', { on: 'gateway', gatewayId: 'H', post: 'end' }],
    ]);
    expect(found[0]).toMatchObject({ cost: 1, rule: null, switchIds: [] });
    expect(inEnglish(found[0]!.label)).toBe('G');
  });

  it('are on the nearer side by the shortest way in a ring', () => {
    const loop = line('loop', [
      [100, 0],
      [100, 300],
      [700, 300],
      [700, 0],
    ]);
    // 100 + 900 m one way round, 700 + 300 m the other, to the middle of the far side at 900 m along the loop.
    const place = (atM: number) =>
      candidates(fed, lane, loop, bridgedGateway('G', 'loop', atM)).find(({ key }) => key === 'gateway:G')!.place;
    expect(place(850)).toMatchObject({ post: 'start' });
    expect(place(950)).toMatchObject({ post: 'end' });
  });

  it('are at each end that meets another line, and not where two ends merely make a corner', () => {
    const found = candidates(
      fed,
      lane,
      line('b', [
        [500, 0],
        [500, 100],
      ]),
      line('c', [
        [500, -100],
        [500, 0],
      ]),
      line('d', [
        [2000, 0],
        [2000, 200],
      ]),
    );
    expect(found.map(({ key, label, cost }) => [key, inEnglish(label), cost])).toEqual([
      ['takeOff:b:start', 'b at lane and c', 1.3],
      ['takeOff:c:end', 'c at lane and b', 1.3],
    ]);
  });

  it('are not at gateways without a crossing, nor on dead lines', () => {
    expect(
      keys(
        fed,
        lane,
        gateway('G', 'lane', 500),
        line(
          'x',
          [
            [500, 0],
            [500, 100],
          ],
          { live: false },
        ),
      ),
    ).toEqual([]);
  });

  it('are at strainers and strained corners of long stretches alone', () => {
    const bent = line('bent', [
      [0, 0],
      [1000, 0],
      [1200, 20],
      [1200, 600],
      [1230, 620],
      [1600, 900],
    ]);
    const posts = [strainer('P', [400, 0]), strainer('A', [600, 0], 'angle')];
    expect(keys(limit(5000), fed, bent, posts)).toEqual(['strainer:P:bent', 'strainer:bent:2', 'strainer:bent:3']);
    expect(keys(limit(20_000), fed, bent, posts)).toEqual([]);
  });

  it('are where the user adds them, at the cost of a run unless told', () => {
    const found = candidates(fed, lane, addedPlace('p', 'lane', 700), addedPlace('q', 'lane', 900, 0.5));
    expect(found.map(({ key, cost }) => [key, cost])).toEqual([
      ['place:p', 2],
      ['place:q', 0.5],
    ]);
  });

  it('are where switches stand, each once', () => {
    const found = candidates(
      fed,
      lane,
      bridgedGateway('G', 'lane', 500),
      gateSwitch('S', 'G', 'start'),
      gateSwitch('T', 'G', 'end'),
      lineSwitch('U', 'lane', 900),
      lineSwitch('V', 'lane', 900.1),
      cutOut('W', { on: 'leadOut', leadOutId: 'L' }),
    );
    expect(found.map(({ key, why, switchIds }) => [key, why, switchIds])).toEqual([
      ['gateway:G', 'gateway', ['S']],
      ['switch:T', 'existing', ['T']],
      ['switch:U', 'existing', ['U', 'V']],
      ['switch:W', 'existing', ['W']],
    ]);
  });

  it("carry the user's word", () => {
    const found = candidates(fed, lane, bridgedGateway('G', 'lane', 500), rule('gateway:G', 'forbidden'));
    expect(found[0]!.rule).toBe('forbidden');
  });
});

describe('the plan', () => {
  const gates = [500, 1000, 1500].flatMap((atM, i) => bridgedGateway(`G${i + 1}`, 'lane', atM));

  it('is nothing without an energiser that touches the fence', () => {
    expect(dividePlan(drawing(lane), surveyOf(drawing(lane)))).toBeNull();
    const off = drawing(lane, energiser('E', [0, 50]));
    expect(dividePlan(off, surveyOf(off))).toBeNull();
  });

  it('needs no switch where all is within the limit', () => {
    const plan = planOf(drawing(limit(5000), fed, lane, gates));
    expect(plan).toMatchObject({
      chosen: [],
      cost: 0,
      optimal: true,
      missing: [],
      surplus: [],
      complete: true,
      overLimit: [],
      changes: [],
    });
    expect(plan.sections).toEqual([{ lengthM: expect.closeTo(1988, 3), gateways: 3 }]);
  });

  it('puts one switch in the middle of a lane that is a little too long', () => {
    const plan = planOf(drawing(limit(1200), fed, lane, gates));
    expect(plan.chosen).toEqual(['gateway:G2']);
    expect(plan.missing.map(({ place }) => place)).toEqual([{ on: 'gateway', gatewayId: 'G2', post: 'start' }]);
    expect(plan.longestSectionM).toBeCloseTo(994, 3);
    expect(plan.changes).toEqual([
      {
        kind: 'leaveOut',
        candidateKey: 'gateway:G2',
        label: message('survey.switches.candidate.named', { name: 'G2' }),
        lengthM: expect.closeTo(1988, 3),
        gateways: 3,
        overByM: expect.closeTo(788, 3),
        overByGateways: 0,
      },
    ]);
  });

  it('keeps to the number of gateways', () => {
    expect(planOf(drawing(limit(5000, 1), fed, lane, gates)).chosen).toHaveLength(2);
  });

  it('has nothing missing once it is taken', () => {
    const project = drawing(limit(1200), fed, lane, gates);
    const taken = planOf(project).missing.reduce((now, { place }, i) => put(now, cutOut(`S${i}`, place)), project);
    const again = planOf(taken);
    expect(again.missing).toEqual([]);
    expect(again.surplus).toEqual([]);
    expect(surveyOf(taken).sections.map(({ lengthM }) => lengthM)).toEqual(
      again.sections.map(({ lengthM }) => expect.closeTo(lengthM, 6)),
    );
  });

  it('does without a switch that is not needed, and keeps one that is pinned or built', () => {
    const project = drawing(limit(1200), fed, lane, gates, gateSwitch('S', 'G1', 'start'));
    const plan = planOf(project);
    expect(plan).toMatchObject({ chosen: ['gateway:G2'], surplus: ['S'] });
    expect(plan.changes).toContainEqual({ kind: 'keep', switchId: 'S', name: 'S', cost: 1 });
    for (const kept of [{ pinned: true }, { status: 'built' as const }]) {
      const around = planOf(put(project, gateSwitch('S', 'G1', 'start', kept)));
      expect(around.surplus).toEqual([]);
      expect(around.chosen).toContain('gateway:G1');
      expect(around.chosen).toHaveLength(2);
    }
  });

  it('goes round what is forbidden and takes what is forced', () => {
    expect(planOf(drawing(limit(1200), fed, lane, gates, rule('gateway:G2', 'forbidden'))).chosen).toHaveLength(2);
    expect(planOf(drawing(limit(5000), fed, lane, gates, rule('gateway:G3', 'forced'))).chosen).toEqual(['gateway:G3']);
    const both = [gateSwitch('S', 'G3', 'start', { pinned: true }), rule('gateway:G3', 'forbidden')];
    expect(planOf(drawing(limit(5000), fed, lane, gates, both)).chosen).toEqual(['gateway:G3']);
  });

  it('leaves out of account what no switch can connect to the energiser', () => {
    const loose = [
      line('loose', [
        [0, 500],
        [3000, 500],
      ]),
      ...bridgedGateway('H', 'loose', 1500),
    ];
    const plan = planOf(drawing(limit(1200), fed, lane, gates, loose));
    expect(plan.chosen).toEqual(['gateway:G2']);
    expect(plan.candidates.some(({ key }) => key === 'gateway:H')).toBe(false);
    const drawn = planOf(drawing(limit(1200), fed, lane, gates, loose, gateSwitch('S', 'H', 'start')));
    expect(drawn.surplus).toEqual([]);
  });

  it('parts a branch where it takes off', () => {
    const branch = line('b', [
      [1000, 0],
      [1000, 900],
    ]);
    expect(planOf(drawing(limit(2500), fed, lane, branch)).chosen).toEqual(['takeOff:b:start']);
    const taken = drawing(limit(2500), fed, lane, branch, endSwitch('S', 'b', 'start'));
    expect(planOf(taken)).toMatchObject({ missing: [], surplus: [] });
  });

  it('says which switch of a ring may stand open: the one where the two ways round meet', () => {
    const around = line('around', [
      [0, 0],
      [0, 1500],
      [2000, 1500],
      [2000, 0],
    ]);
    const ringGates = [...gates, ...bridgedGateway('H', 'around', 800), ...bridgedGateway('I', 'around', 2600)];
    const plan = planOf(drawing(limit(3000), fed, lane, around, ringGates));
    expect(plan.chosen.length).toBeGreaterThanOrEqual(2);
    // Round the ring of 7000 m the ways meet at 3500 m: the furthest gateway is I, 2600 m along the far side.
    const furthest = ['gateway:I', 'gateway:G3', 'gateway:G2'].find((key) => plan.chosen.includes(key));
    expect(plan.mayStandOpen).toEqual([furthest]);
    expect(planOf(drawing(limit(1200), fed, lane, gates)).mayStandOpen).toEqual([]);
  });
});

describe('what no set of switches brings within the limits', () => {
  const gates = [500, 1000, 1500].flatMap((atM, i) => bridgedGateway(`G${i + 1}`, 'lane', atM));
  const told = (project: Project) =>
    overLimitInWords(project, planOf(project).overLimit, figures('metric')).map(({ text }) => text);

  it('is named with its lines, and is known without a plan', () => {
    const project = drawing(limit(300), fed, lane, gates);
    const plan = planOf(project);
    expect(plan.overLimit).toHaveLength(4);
    expect(plan.overLimit[0]).toMatchObject({
      lineIds: ['lane'],
      lengthM: expect.closeTo(498, 3),
      overByM: expect.closeTo(198, 3),
      overByGateways: 0,
      barred: [],
    });
    expect(overLimitStretches(project, surveyOf(project))).toEqual(plan.overLimit);
    expect(told(project)).toEqual([
      'lane: 2 stretches of 498 m each, 198 m over the limit, without a place for a switch.',
      'lane: 2 stretches of 496 m each, 196 m over the limit, without a place for a switch.',
    ]);
  });

  it('is never said to be proven within the limits, on the screen or in the sentence', () => {
    const project = drawing(limit(300), fed, lane, gates);
    const made = surveyOf(project);
    const plan = planOf(project);
    expect(plan.optimal).toBe(true);
    expect(inEnglish(proofInWords(plan, false))).toBe(
      'No set of switches keeps everything within these limits. Proven for the rest: none costs less.',
    );
    const taken = plan.missing.reduce((now, { place }, i) => put(now, cutOut(`S${i}`, place)), project);
    expect(inEnglish(settledInWords(planOf(taken)))).toBe(
      "The switches as drawn are the plan. It can't keep every section within the limits.",
    );
    expect(inEnglish(divideSentence(made, plan))).toBe(
      '1 section, longest 1.99 km, 1 over the limit; 3 switches missing, 4 stretches that no switch brings within the limits.',
    );
  });

  it('is what the user rules switches out on, too, and what has too many gateways', () => {
    const barred = ['gateway:G1', 'gateway:G2', 'gateway:G3'].map((key) => rule(key, 'forbidden'));
    expect(told(drawing(limit(1200), fed, lane, gates, barred))).toEqual([
      'lane: a stretch of 1.99 km, 788 m over the limit, with a switch ruled out at G1, G2 and G3.',
    ]);
    const gateways = drawing(limit(5000, 1), fed, lane, gates, barred);
    expect(told(gateways)).toEqual([
      'lane: a stretch with 3 gateways, the limit being 1, with a switch ruled out at G1, G2 and G3.',
    ]);
    expect(inEnglish(proofInWords(planOf(gateways), false))).toContain(
      'No set of switches keeps everything within these limits.',
    );
  });

  it('leaves the proof alone where all is within the limits', () => {
    const plan = planOf(drawing(limit(1200), fed, lane, gates));
    expect(inEnglish(proofInWords(plan, false))).toBe('Proven: no set of switches costs less within these limits.');
    expect(inEnglish(settledInWords(plan))).toBe(
      'The switches as drawn are the plan: no cheaper set keeps every section within the limits.',
    );
  });
});

describe('a plan that is not proven', () => {
  const plan = planOf(drawing(limit(1200), fed, lane, bridgedGateway('G', 'lane', 1000)));
  const open = { ...plan, optimal: false, complete: false, cost: 5, costBound: 4 };
  const bound = 'No set can cost less than 4.0: this one is at most 1.0 (20 % of its cost) above.';

  it('says whether it is still looked for, was stopped, or is the end, and by how much it can be off', () => {
    expect(inEnglish(proofInWords(open, false))).toBe(`Looking for a cheaper set. ${bound}`);
    expect(inEnglish(proofInWords(open, true))).toBe(`Stopped before the proof; a cheaper set may be found. ${bound}`);
    expect(inEnglish(proofInWords({ ...open, complete: true }, false))).toBe(`Not proven cheapest. ${bound}`);
    const proven = 'Proven: no set of switches costs less within these limits.';
    expect(inEnglish(proofInWords({ ...plan, complete: false }, false))).toBe(
      `${proven} Looking for one as cheap whose longest section is shorter.`,
    );
    expect(inEnglish(proofInWords({ ...plan, complete: false }, true))).toBe(
      `${proven} Stopped while looking for one as cheap whose longest section is shorter.`,
    );
  });

  it('claims nothing of the switches as drawn', () => {
    expect(inEnglish(settledInWords(open))).toBe(
      'The switches as drawn are the plan: no cheaper set that keeps every section within the limits was found.',
    );
  });
});

describe('the same drawing', () => {
  it('gives the same plan in whatever order its things were drawn', () => {
    fc.assert(
      fc.property(randomDrawing, fc.constantFrom(60, 120), fc.infiniteStream(fc.nat()), (drawn, maxSectionM, order) => {
        const project = put(drawn, limit(maxSectionM));
        const shuffled = Object.fromEntries(
          Object.entries(project).map(([kind, things]) => {
            const keyed = [...(things as ReadonlyMap<string, Thing>)].map((entry) => ({
              entry,
              at: order.next().value,
            }));
            return [kind, new Map(keyed.sort((a, b) => a.at - b.at).map(({ entry }) => entry))];
          }),
        ) as unknown as Project;
        expect(dividePlan(shuffled, surveyOf(shuffled))).toEqual(dividePlan(project, surveyOf(project)));
      }),
      { seed: 41, numRuns: 150 },
    );
  });
});
