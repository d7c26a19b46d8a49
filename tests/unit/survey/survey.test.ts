import { describe, expect, it } from 'vitest';
import { pointInRing } from '../../../core/geometry/ring.ts';
import { put, remove } from '../../../core/model/project.ts';
import type { Thing } from '../../../core/model/things.ts';
import { middleOf, placesToName } from '../../../core/survey/paddocks.ts';
import { sectionLetter } from '../../../core/survey/sectionLetter.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { feedInWords } from '../../../core/survey/switchInWords.ts';
import type { SwitchRow } from '../../../core/survey/types.ts';
import {
  at,
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
  paddockName,
  property,
  ring,
} from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';

const survey = (...things: readonly (Thing | readonly Thing[])[]) => surveyOf(drawing(...things));
const fed = [
  energiser('E', [0, -20]),
  leadOut('L', 'E', [
    [0, -20],
    [0, 0],
  ]),
];
const lane = line('lane', [
  [0, 0],
  [1000, 0],
]);
const square = ring('sq', [
  [0, 0],
  [400, 0],
  [400, 300],
  [0, 300],
]);

describe('a square paddock with one gateway', () => {
  const { totals, paddocks, gateways, crossings, sections, lines } = survey(
    fed,
    square,
    bridgedGateway('G', 'sq', 200),
  );

  it('has its lengths and its area', () => {
    expect(lines.get('sq')).toMatchObject({ closed: true, lengthM: expect.closeTo(1400, 3) });
    expect(totals).toMatchObject({
      fenceM: expect.closeTo(1396, 3),
      liveFenceM: expect.closeTo(1396, 3),
      liveWireM: expect.closeTo(2792, 3),
      fedFenceM: expect.closeTo(1396, 3),
      paddockAreaM2: expect.closeTo(120_000, 1),
      paddocks: 1,
      gateways: 1,
    });
    expect(paddocks).toHaveLength(1);
    expect(paddocks[0]).toMatchObject({ named: null, areaM2: expect.closeTo(120_000, 1), holes: [] });
    expect(sections.map(({ letter, lengthM }) => [letter, Math.round(lengthM)])).toEqual([['A', 1396]]);
  });

  it('has a gateway fed from both sides of the ring', () => {
    expect(gateways.get('G')).toMatchObject({
      fromM: expect.closeTo(198, 6),
      toM: expect.closeTo(202, 6),
      bearingDeg: expect.closeTo(90, 6),
      supplyFrom: 'both',
      lineLive: true,
    });
    expect(gateways.get('G')!.centre[0]).toBeCloseTo(200, 6);
  });

  it('has a crossing with a bow of a quarter of the opening: r = 2.5 m, trench = 2.5 x 4 atan(1/2)', () => {
    const trenchM = 2.5 * 4 * Math.atan(0.5);
    expect(crossings.get('G')).toMatchObject({
      bowM: expect.closeTo(1, 6),
      bowAssumed: true,
      chordM: expect.closeTo(4, 6),
      bendRadiusM: expect.closeTo(2.5, 6),
      tighterThanPipeAllows: false,
      trenchM: expect.closeTo(trenchM, 6),
      // Depth 0.3 m, riser 0.9 m, allowance 0.3 m, tails 1 m, earth joined 0.3 m up: the defaults.
      pipeM: expect.closeTo(trenchM + 2.4 + 0.3, 6),
      liveCableM: expect.closeTo(trenchM + 2.7 + 2, 6),
      earthCableM: expect.closeTo(trenchM + 1.2, 6),
    });
    // To the left of the line, which runs east there: north.
    const { path } = crossings.get('G')!;
    expect(path[Math.floor(path.length / 2)]![1]).toBeCloseTo(1, 6);
    expect(totals.trenchM).toBeCloseTo(trenchM, 6);
  });
});

describe('crossings', () => {
  it('go straight over the gateway when they are overhead, with no trench or pipe, the earth wire beside them', () => {
    const [made, crossing] = bridgedGateway('G', 'sq', 200);
    const { crossings } = survey(square, made, { ...crossing, method: 'overhead' });
    expect(crossings.get('G')).toMatchObject({
      bowM: 0,
      trenchM: 0,
      pipeM: 0,
      tighterThanPipeAllows: false,
    });
    expect(crossings.get('G')!.liveCableM).toBeCloseTo(4 + 2 * 1.9 + 0.3, 6);
    expect(crossings.get('G')!.earthCableM).toBeCloseTo(4 + 2 * 0.9 + 0.3, 6);
    const without = survey(square, made, { ...crossing, method: 'overhead', earth: false });
    expect(without.crossings.get('G')!.earthCableM).toBe(0);
  });

  it('say where the pipe would be bent tighter than it allows', () => {
    const [made, crossing] = bridgedGateway('G', 'sq', 200, { widthM: 1 });
    const tight = survey(square, made, { ...crossing, bowM: 0.45, minBendRadiusM: 0.51 });
    expect(tight.crossings.get('G')!.tighterThanPipeAllows).toBe(true);
  });
});

describe('the bow of a crossing', () => {
  it('lies to the right where the crossing says so', () => {
    const [made, crossing] = bridgedGateway('G', 'sq', 200);
    const { path } = survey(square, made, { ...crossing, bowM: 0.8, bowSide: 'right' }).crossings.get('G')!;
    expect(path[Math.floor(path.length / 2)]![1]).toBeCloseTo(-0.8, 6);
  });
});

describe('paddocks', () => {
  const right = line('right', [
    [400, 0],
    [800, 0],
    [800, 300],
    [400, 300],
  ]);

  it('share a fence and take the name whose point lies in them', () => {
    const { paddocks, plane } = survey(
      square,
      right,
      paddockName('p1', 'Creek', [500, 100]),
      paddockName('p2', 'Hill', [100, 100]),
    );
    expect(paddocks.map(({ name, areaM2 }) => [name, Math.round(areaM2)]).sort()).toEqual([
      ['Creek', 120_000],
      ['Hill', 120_000],
    ]);
    expect(placesToName(paddocks, plane)).toEqual([]);
  });

  it('are land that lies aslant and is narrow, but not the gap between two lines of one fence', () => {
    const strip = (widthM: number) =>
      line('strip', [
        [0, 0],
        [600, 500],
        [600 - widthM, 500 + widthM],
        [-widthM, widthM],
        [0, 0],
      ]);
    const lane = survey(strip(4));
    expect(lane.paddocks).toHaveLength(1);
    expect(lane.paddocks[0]!.areaM2).toBeCloseTo(4 * 1100, -1);
    expect(pointInRing(middleOf(lane.paddocks[0]!), lane.paddocks[0]!.ring)).toBe(true);
    expect(survey(strip(0.5)).paddocks).toEqual([]);
  });

  it('ask for a name where none lies in them', () => {
    const { paddocks, plane } = survey(square, right, paddockName('p2', 'Hill', [100, 100]));
    const places = placesToName(paddocks, plane);
    expect(places).toHaveLength(1);
    const unnamed = paddocks.find(({ named }) => named === null)!;
    expect(pointInRing(plane.toXy(places[0]!), unnamed.ring)).toBe(true);
  });

  it('count what lies within another as its own, and keep lines that are not live', () => {
    const yards = ring(
      'yards',
      [
        [100, 100],
        [200, 100],
        [200, 200],
        [100, 200],
      ],
      { live: false },
    );
    const { paddocks, totals } = survey(square, yards);
    expect(paddocks.map(({ areaM2 }) => Math.round(areaM2)).sort()).toEqual([10_000, 110_000]);
    expect(totals.paddockAreaM2).toBeCloseTo(120_000, 1);
  });
});

describe('sections', () => {
  it('are lettered as they are reached from the energiser', () => {
    const branches = [
      line('far', [
        [900, 0],
        [900, 200],
      ]),
      line('near', [
        [100, 0],
        [100, 200],
      ]),
    ];
    const { sections } = survey(fed, lane, branches, endSwitch('S', 'far', 'start'), endSwitch('T', 'near', 'start'));
    expect(sections.map(({ letter, lineIds }) => [letter, lineIds.join()])).toEqual([
      ['A', 'lane'],
      ['B', 'near'],
      ['C', 'far'],
    ]);
    expect(sections[0]).toMatchObject({ holdsEnergiser: true, fed: true, switchIds: ['S', 'T'], overByM: null });
  });

  it('put a crossing in the section beyond a switch on its supply side', () => {
    const { sections } = survey(fed, lane, bridgedGateway('G', 'lane', 500), gateSwitch('S', 'G', 'start'));
    expect(sections.map(({ gatewayIds, lengthM }) => [gatewayIds, Math.round(lengthM)])).toEqual([
      [[], 498],
      [['G'], 498],
    ]);
  });

  it('list their switches by name, also after one was deleted and brought back', () => {
    const along = [10, 2, 1].map((number) => lineSwitch(`S${number}`, 'lane', number * 80));
    const { switches } = survey(fed, lane, along);
    expect(switches.map((row) => row.switch.name)).toEqual(['S1', 'S2', 'S10']);
  });

  it('say by how much they are over the limit', () => {
    const { sections } = survey(property({ divide: { ...property().divide, maxSectionM: 800 } }), fed, lane);
    expect(sections[0]!.overByM).toBeCloseTo(200, 3);
    expect(sections[0]!.overByGateways).toBeNull();
    const many = survey(property({ divide: { ...property().divide, maxGateways: 1 } }), fed, lane, [
      ...bridgedGateway('G', 'lane', 300),
      ...bridgedGateway('H', 'lane', 600),
    ]);
    expect(many.sections[0]).toMatchObject({ overByM: null, overByGateways: 1 });
  });

  it('follow with what nothing reaches, and leave a cut-off lead-out without a letter', () => {
    const loose = line('loose', [
      [0, 500],
      [100, 500],
    ]);
    const made = survey(fed, lane, loose, cutOut('S', { on: 'leadOut', leadOutId: 'L' }));
    expect(made.sections.map(({ letter, lineIds, fed: isFed }) => [letter, lineIds.join(), isFed])).toEqual([
      ['A', 'lane', true],
      ['B', 'loose', false],
    ]);
    const leadOutEdge = made.network.edges.findIndex(({ kind }) => kind === 'leadOut');
    expect(made.sectionOfEdge[leadOutEdge]).toBe(-1);
  });

  it('go on past Z', () => {
    expect([0, 25, 26, 51, 52, 701, 702].map(sectionLetter)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA']);
  });
});

describe('the switch register', () => {
  const rowsOf = (...things: readonly (Thing | readonly Thing[])[]) =>
    new Map(survey(fed, lane, ...things).switches.map((row): [string, SwitchRow] => [row.switch.id, row]));

  it('tells supply, far side and what goes dead', () => {
    const rows = rowsOf(
      line('b', [
        [700, 0],
        [700, 250],
      ]),
      bridgedGateway('G', 'lane', 500),
      bridgedGateway('H', 'b', 100),
      gateSwitch('S', 'G', 'start'),
      endSwitch('T', 'b', 'start'),
    );
    expect(rows.get('S')).toMatchObject({
      feed: { from: 'oneSide', supply: 'A', far: 'B', off: false },
      cutsOff: { lengthM: expect.closeTo(498 + 246, 3), gatewayIds: ['G', 'H'], sections: ['B', 'C'] },
      wrongSide: false,
    });
    expect(inEnglish(rows.get('S')!.where)).toBe('start post of G on lane');
    expect(inEnglish(rows.get('T')!.where)).toBe('start of b at lane');
    expect(rows.get('S')!.along[0]).toBeCloseTo(1, 9);
    expect(rows.get('T')).toMatchObject({
      feed: { from: 'oneSide', supply: 'B', far: 'C', off: false },
      cutsOff: { lengthM: expect.closeTo(246, 3), gatewayIds: ['H'], sections: ['C'] },
    });
    expect(rows.get('T')!.along[1]).toBeCloseTo(1, 9);
  });

  it('finds a switch on the wrong side of its crossing', () => {
    const rows = rowsOf(bridgedGateway('G', 'lane', 500), gateSwitch('S', 'G', 'end'));
    expect(rows.get('S')).toMatchObject({ wrongSide: true, feed: { from: 'oneSide', supply: 'A', far: 'B' } });
    expect(rows.get('S')!.along[0]).toBeCloseTo(1, 9);
  });

  it('knows a ring, where opening one switch cuts nothing off', () => {
    const loop = line('loop', [
      [100, 0],
      [100, 200],
      [300, 200],
      [300, 0],
    ]);
    const rows = rowsOf(loop, lineSwitch('S', 'loop', 300));
    expect(rows.get('S')).toMatchObject({
      feed: { from: 'bothSides', sides: ['A', 'A'], off: false },
      cutsOff: { lengthM: 0, gatewayIds: [], sections: [] },
    });
  });

  it('tells a switch that stands open by what it keeps dead', () => {
    const rows = rowsOf(
      line('b', [
        [700, 0],
        [700, 250],
      ]),
      endSwitch('S', 'b', 'start', { normally: 'open' }),
    );
    expect(rows.get('S')).toMatchObject({
      feed: { from: 'oneSide', supply: 'A', far: 'B', off: true },
      cutsOff: { lengthM: expect.closeTo(250, 3), sections: ['B'] },
    });
  });

  it('knows a switch of a ring that stands open', () => {
    const loop = line('loop', [
      [100, 0],
      [100, 200],
      [300, 200],
      [300, 0],
    ]);
    const rows = rowsOf(loop, lineSwitch('S', 'loop', 300, { normally: 'open' }));
    expect(rows.get('S')).toMatchObject({
      feed: { from: 'bothSides', sides: ['A', 'A'], off: true },
      cutsOff: { lengthM: 0 },
    });
  });

  it('tells a ring whose sections differ by both letters, and a switch that nothing feeds from either', () => {
    const loop = line('loop', [
      [100, 0],
      [100, 200],
      [300, 200],
      [300, 0],
    ]);
    const ends = [endSwitch('T', 'loop', 'start'), endSwitch('U', 'loop', 'end')];
    const closed = rowsOf(loop, ends, lineSwitch('S', 'loop', 300));
    expect(closed.get('S')!.feed).toEqual({ from: 'bothSides', sides: ['B', 'C'], off: false });
    expect(closed.get('T')!.feed).toMatchObject({ from: 'bothSides', off: false });
    // With one of them off, the ring is a branch each way.
    const opened = rowsOf(loop, ends, lineSwitch('S', 'loop', 300, { normally: 'open' }));
    expect(opened.get('S')!.feed).toEqual({ from: 'bothSides', sides: ['B', 'C'], off: true });
    expect(opened.get('U')!.feed).toEqual({ from: 'oneSide', supply: 'A', far: 'C', off: false });
    // Both ends off: the loop has current from nowhere.
    const dead = rowsOf(
      loop,
      ends.map((each) => ({ ...each, normally: 'open' as const })),
      lineSwitch('S', 'loop', 300),
    );
    expect(dead.get('S')!.feed).toEqual({ from: 'nowhere', sides: ['B', 'C'], off: false });
    expect([...closed.values(), ...dead.values()].map(({ feed }) => inEnglish(feedInWords(feed)))).toEqual([
      'both sides: B | C',
      'both sides: B | A',
      'both sides: C | A',
      'not fed: B | C',
      'from A to B',
      'from A to C',
    ]);
  });

  it('between two energisers is fed from both sides, by the cable alone too', () => {
    const second = [
      energiser('E2', [1000, -20]),
      leadOut('L2', 'E2', [
        [1000, -20],
        [1000, 0],
      ]),
    ];
    const rows = rowsOf(second, lineSwitch('S', 'lane', 500), cutOut('K', { on: 'leadOut', leadOutId: 'L2' }));
    expect(rows.get('S')!.feed).toEqual({ from: 'bothSides', sides: ['A', 'B'], off: false });
    expect(rows.get('K')!.feed).toEqual({ from: 'bothSides', sides: [null, 'B'], off: false });
  });

  it('lists a switch that the network cannot use, and leaves out one whose place is gone', () => {
    const rows = rowsOf(bridgedGateway('G', 'lane', 500), lineSwitch('S', 'lane', 500.5), lineSwitch('T', 'gone', 5));
    expect([...rows.keys()]).toEqual(['S']);
    expect(rows.get('S')).toMatchObject({
      feed: { from: 'notInFence' },
    });
    expect(inEnglish(rows.get('S')!.where)).toBe('lane, 501 m from its start');
  });

  it('has nothing before a switch at the lead-out', () => {
    const rows = rowsOf(cutOut('S', { on: 'leadOut', leadOutId: 'L' }));
    expect(rows.get('S')).toMatchObject({
      feed: { from: 'oneSide', supply: null, far: 'A', off: false },
      cutsOff: { lengthM: expect.closeTo(1000, 3) },
    });
  });
});

describe('gateways', () => {
  it('are fed from one post, or not at all', () => {
    const back = line('back', [
      [1000, 0],
      [1000, 300],
    ]);
    const { gateways } = survey(
      fed,
      lane,
      back,
      bridgedGateway('G', 'lane', 500),
      bridgedGateway('H', 'back', 100),
      gateway('I', 'back', 200),
      bridgedGateway('J', 'back', 260),
    );
    expect([...gateways.values()].map(({ supplyFrom }) => supplyFrom)).toEqual(['start', 'start', 'start', null]);
  });

  it('on a dead line keep their shape', () => {
    const { gateways, network } = survey(
      line(
        'd',
        [
          [0, 0],
          [90, 0],
        ],
        { live: false },
      ),
      gateway('G', 'd', 50),
    );
    expect(gateways.get('G')).toMatchObject({ lineLive: false, supplyFrom: null });
    expect(network.edges).toEqual([]);
  });
});

describe('a survey after an edit', () => {
  const project = drawing(fed, lane, square, bridgedGateway('G', 'lane', 500), gateSwitch('S', 'G', 'start'));
  const before = { project, survey: surveyOf(project) };

  it('takes what did not change from the survey before', () => {
    const named = put(project, paddockName('p', 'Creek', [100, 100]));
    const after = surveyOf(named, before);
    expect(after.network).toBe(before.survey.network);
    expect(after.paddocks[0]!.name).toBe('Creek');
    expect(after.paddocks[0]!.ring).toBe(before.survey.paddocks[0]!.ring);
    const moved = surveyOf(put(project, gateway('G', 'lane', 510)), before);
    expect(moved.paddocks).toBe(before.survey.paddocks);
    expect(moved.lines.get('lane')).toBe(before.survey.lines.get('lane'));
    expect(moved.gateways.get('G')!.fromM).toBeCloseTo(508, 6);
  });

  it('is the same as one made from nothing', () => {
    const edits = [
      put(
        project,
        line('lane', [
          [0, 0],
          [900, 0],
        ]),
      ),
      remove(project, project.gateway.get('G')!),
      put(project, { ...project.property.get('property')!, snapToleranceM: 1 }),
      put(project, { ...project.property.get('property')!, origin: at([5000, 5000]) }),
      put(project, { ...project.property.get('property')!, placed: false }),
      put(project, gateSwitch('S', 'G', 'start', { normally: 'open' })),
    ];
    const defaults = { ...property().crossings, bowShare: 0.4 };
    edits.push(put(project, { ...project.property.get('property')!, crossings: defaults }));
    const apart = put(
      project,
      line('b', [
        [700, 0.5],
        [700, 90],
      ]),
    );
    const joined = put(apart, { ...project.property.get('property')!, snapToleranceM: 0.6 });
    const settled = surveyOf(joined, { project: apart, survey: surveyOf(apart) });
    expect(withoutPlane(settled)).toEqual(withoutPlane(surveyOf(structuredClone(joined))));
    for (const edited of edits)
      expect(withoutPlane(surveyOf(edited, before))).toEqual(withoutPlane(surveyOf(structuredClone(edited))));
  });
});

/** The plane holds functions, which are never equal. */
function withoutPlane({ plane, ...rest }: ReturnType<typeof surveyOf>) {
  return { ...rest, origin: plane.origin };
}
