import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newFenceType, startingFenceTypes } from '../../../core/model/defaults.ts';
import { orderDefaults } from '../../../core/model/orderDefaults.ts';
import type { Project } from '../../../core/model/project.ts';
import type { FenceLine, FenceMake, FenceType, OrderSettings, Service } from '../../../core/model/things.ts';
import { handsOf } from '../../../core/quantities/takeOff/countGateways.ts';
import { takeOff } from '../../../core/quantities/takeOff.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import {
  at,
  bridgedGateway,
  drawing,
  energiser,
  gateSwitch,
  gateway,
  leadOut,
  line,
  ring,
  strainer,
} from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';
import { randomProject } from '../../support/randomProjects.ts';

function amounts(project: Project, settings: Partial<OrderSettings> = {}): Record<string, number> {
  const { quantities } = takeOff({
    project,
    survey: surveyOf(project),
    settings: { ...orderDefaults, ...settings },
  });
  return Object.fromEntries(quantities.map(({ key, amount }) => [key, Number(amount.toFixed(3))]));
}

const square = (id = 'F1') =>
  ring(id, [
    [0, 0],
    [100, 0],
    [100, 100],
    [0, 100],
  ]);

describe('a square paddock of 100 m sides with one gateway of 4 m, two live wires, posts every 10 m (worked by hand)', () => {
  const project = drawing(square(), ...bridgedGateway('G1', 'F1', 50));
  const counted = amounts(project);

  it('has four corners, two gate posts, and a stay for each end of fence on them', () => {
    expect(counted).toMatchObject({ strainer: 4, gatePost: 2, stay: 4 * 2 + 2 });
  });

  it('has posts between: 9 on each of three sides, 4 on both sides of the gateway (48 m in 5 bays)', () => {
    expect(counted.post).toBe(3 * 9 + 2 * 4);
  });

  it('has wire for 396 m of fence, and 0.5 m at both ends of five strains, twice', () => {
    expect(counted['wire:steel-2.5']).toBeCloseTo(2 * (396 + 5 * 2 * 0.5), 1);
  });

  it('has an insulator for each live wire at each post between, and one at each end of each wire', () => {
    expect(counted).toMatchObject({ insulator: 2 * 35, strainInsulator: 2 * 10 });
  });

  it('joins both wires of both sides at each corner; the crossing joins those at the gateway', () => {
    expect(counted).toMatchObject({ joint: 4 * 2 * 2, cableClamp: 2, earthClamp: 2, seal: 2, lug: 4 });
  });

  it('has one tightener for each wire of each strain under a quarter of a mile', () => {
    expect(counted.tightener).toBe(2 * 5);
  });

  it('has one gate leaf and one set of hardware', () => {
    expect(counted).toMatchObject({ 'gate:4.00': 1, 'gateway:single': 1 });
  });

  it('takes pipe and cables from the crossing as surveyed', () => {
    const figures = surveyOf(project).crossings.get('G1')!;
    expect(counted['pipe:19']).toBeCloseTo(figures.pipeM, 3);
    expect(counted['cable:cable-steel-2.5']).toBeCloseTo(figures.liveCableM, 3);
    expect(counted.earthCable).toBeCloseTo(figures.earthCableM, 3);
  });

  it('counts the work', () => {
    expect(counted['work:fenceKm']).toBeCloseTo(0.396, 3);
    expect(counted).toMatchObject({ 'work:strainer': 6, 'work:gateway': 1, 'work:crossing': 1 });
  });
});

describe('two paddocks that share a fence (worked by hand)', () => {
  // The second paddock is a line of three sides from one corner of the first to another.
  const second = line('F2', [
    [100, 0],
    [200, 0],
    [200, 100],
    [100, 100],
  ]);
  const counted = amounts(drawing(square(), second));

  it('counts the shared corners once', () => {
    expect(counted.strainer).toBe(6);
    expect(counted.post).toBe(7 * 9);
  });

  it('stays a shared corner for each of the three fences that end on it', () => {
    expect(counted.stay).toBe(4 * 2 + 2 * 2 + 2);
  });

  it('joins all live wires that meet at a shared corner', () => {
    expect(counted.joint).toBe(2 * (2 + 2) + 2 * (2 + 2) + 2 * (2 + 2 + 2));
  });

  it('is the same drawn as two closed lines of which one lies beside, as long as nothing is drawn twice', () => {
    const whole = ring('F1', [
      [0, 0],
      [200, 0],
      [200, 100],
      [0, 100],
    ]);
    const middle = line('F2', [
      [100, 0],
      [100, 100],
    ]);
    expect(amounts(drawing(whole, middle))).toMatchObject({ strainer: 6, post: 7 * 9 });
  });
});

describe('where a fence takes off from the middle of another', () => {
  const trunk = line('F1', [
    [0, 0],
    [100, 0],
  ]);
  const branch = line('F2', [
    [55, 0],
    [55, 60],
  ]);
  const counted = amounts(drawing(trunk, branch));

  it('sets one strainer, stayed for the branch only; the trunk passes with insulators', () => {
    expect(counted).toMatchObject({ strainer: 4, stay: 4 });
    // Trunk: 55 m in 6 bays and 45 m in 5; branch: 60 m in 6.
    expect(counted.post).toBe(5 + 4 + 5);
    expect(counted.insulator).toBe(2 * (5 + 4 + 1 + 5));
    expect(counted.strainInsulator).toBe(2 * 4);
  });

  it('clamps the branch to the trunk, and both wires of each fence to each other at its far end', () => {
    expect(counted.joint).toBe(2 + 2 + 2 + 2 + 2);
  });
});

describe('bends', () => {
  const bent = (deg: number) => {
    const turn = (deg * Math.PI) / 180;
    return amounts(
      drawing(
        line('F1', [
          [0, 0],
          [100, 0],
          [100 + 100 * Math.cos(turn), 100 * Math.sin(turn)],
        ]),
      ),
    );
  };

  it('take nothing, an angle post or a strainer by how far they turn', () => {
    expect(bent(5)).toMatchObject({ strainer: 2, post: 19 });
    expect(bent(5).anglePost).toBeUndefined();
    expect(bent(30)).toMatchObject({ strainer: 2, anglePost: 1, post: 18, stay: 2, insulator: 2 * 19 });
    expect(bent(90)).toMatchObject({ strainer: 3, post: 18, stay: 4 });
  });
});

describe('a strain longer than allowed', () => {
  it('is cut into equal ones', () => {
    const counted = amounts(
      drawing(
        line('F1', [
          [0, 0],
          [2500, 0],
        ]),
      ),
      { maxStrainM: 1000 },
    );
    expect(counted).toMatchObject({ strainer: 4, stay: 6, strainInsulator: 2 * 6 });
    // Three strains of 833.3 m: 84 bays of under 10 m each; three tighteners for each wire of each.
    expect(counted).toMatchObject({ post: 3 * 83, tightener: 2 * 3 * 3 });
  });
});

describe('marked posts', () => {
  it('cut the wires at a strainer, bend them at an angle post, carry them at any other', () => {
    const fence = line('F1', [
      [0, 0],
      [100, 0],
    ]);
    expect(amounts(drawing(fence, strainer('P1', [40, 0])))).toMatchObject({ strainer: 3, stay: 4, post: 3 + 5 });
    expect(amounts(drawing(fence, strainer('P1', [40, 0], 'angle')))).toMatchObject({ anglePost: 1, stay: 2 });
    expect(amounts(drawing(fence, strainer('P1', [40, 0], 'other')))).toMatchObject({ strainer: 2, post: 9 });
  });
});

describe('a bend at just the angle of a rule', () => {
  /** A line through the origin that turns by `turnDeg`, seen from 36 sides. */
  const bends = (turnDeg: number) =>
    Array.from({ length: 36 }, (_, i) => {
      const ray = (deg: number): [number, number] => [
        80 * Math.sin((deg * Math.PI) / 180),
        80 * Math.cos((deg * Math.PI) / 180),
      ];
      return line('F1', [ray(i * 10 + 3 + 180), [0, 0], ray(i * 10 + 3 + turnDeg)]);
    });
  const strainers = (turnDeg: number) => new Set(bends(turnDeg).map((bent) => amounts(drawing(bent)).strainer));
  const anglePosts = (turnDeg: number) => new Set(bends(turnDeg).map((bent) => amounts(drawing(bent)).anglePost ?? 0));

  it('is a strainer at 45 degrees and an angle post at 10, whichever way the fence runs', () => {
    expect([...strainers(45)]).toEqual([3]);
    expect([...anglePosts(10)]).toEqual([1]);
  });

  it('is none where it is a tenth of a degree less', () => {
    expect([...strainers(44.9)]).toEqual([2]);
    expect([...anglePosts(9.9)]).toEqual([0]);
  });
});

describe('two vertices on top of each other', () => {
  it.each([
    [
      'in a corner',
      [
        [0, 0],
        [100, 0],
        [100, 0],
        [100, 100],
      ],
    ],
    [
      'at the ends and in a corner',
      [
        [0, 0],
        [0, 0],
        [100, 0],
        [100, 0],
        [100, 0],
        [100, 100],
        [100, 100],
      ],
    ],
  ] as const)('%s are one corner: 3 strainers with 4 stays, 2 x (200 + 2 x 2 x 0.5) m of wire', (_, path) => {
    const counted = amounts(drawing(line('F1', path)));
    expect(counted).toMatchObject({ strainer: 3, stay: 4 });
    expect(counted['wire:steel-2.5']).toBeCloseTo(404, 1);
  });
});

describe('what stands already', () => {
  const built = line(
    'F1',
    [
      [0, 0],
      [100, 0],
    ],
    { status: 'built' },
  );
  const planned = line('F2', [
    [100, 0],
    [100, 50],
  ]);

  it('is left out of the order, with the posts it lends to what is planned', () => {
    const counted = amounts(drawing(built, planned));
    expect(counted).toMatchObject({ strainer: 1, stay: 2, post: 4 });
    expect(counted['wire:steel-2.5']).toBeCloseTo(2 * (50 + 1), 1);
  });

  it('is counted when all is asked for', () => {
    expect(amounts(drawing(built, planned), { count: 'all' })).toMatchObject({ strainer: 3, post: 9 + 4 });
  });

  it('still takes gate posts, stays and strain insulators for a gateway that is to be put in', () => {
    const counted = amounts(drawing(built, gateway('G1', 'F1', 50)));
    expect(counted).toMatchObject({ gatePost: 2, stay: 2, strainInsulator: 4, 'gate:4.00': 1 });
    expect(counted.post).toBeUndefined();
  });
});

describe('fences that are not live', () => {
  it('take no insulators, and staples for every wire', () => {
    const counted = amounts(
      drawing(
        line(
          'F1',
          [
            [0, 0],
            [100, 0],
          ],
          { live: false, typeId: 'ft-4' },
        ),
      ),
    );
    expect(counted.insulator).toBeUndefined();
    expect(counted.strainInsulator).toBeUndefined();
    expect(counted.joint).toBeUndefined();
    expect(counted.staple).toBe(4 * 16);
  });
});

/**
 * One kilometre, straight, of fence with posts every 10 m, worked by hand: 101 posts of which the two at the ends are
 * strainers, so 99 between; one strain of 1,000 m (the longest allowed), which begins three stretches of a quarter mile
 * (402.336 m), so three tighteners a wire; tie-offs of 0.5 m at both ends of each wire.
 */
describe('a kilometre of fence by its wires (worked by hand)', () => {
  // A millimetre short, so that no bay or strain is begun by the last bit of a geodesic.
  const straight = (type: FenceType, changes: Partial<FenceLine> = {}) =>
    amounts(
      drawing(
        { ...type, postSpacingM: 10 },
        line(
          'F1',
          [
            [0, 0],
            [999.999, 0],
          ],
          { typeId: type.id, ...changes },
        ),
      ),
    );
  const starting = (id: string) => startingFenceTypes().find((type) => type.id === id)!;

  it('the boundary of seven wires: 7 x 1,001 m, insulators for two, staples for five', () => {
    const counted = straight(starting('ft-boundary'));
    expect(counted['wire:steel-2.5']).toBeCloseTo(7 * 1001, 1);
    expect(counted).toMatchObject({ post: 99, tightener: 7 * 3, insulator: 2 * 99, strainInsulator: 2 * 2 });
    expect(counted).toMatchObject({ staple: 5 * 99, stay: 2, strainer: 2 });
    expect(counted.barbedWire).toBeUndefined();
  });

  it('four wires, two live and one earth: 4 x 1,001 m', () => {
    const counted = straight(starting('ft-4'));
    expect(counted['wire:steel-2.5']).toBeCloseTo(4 * 1001, 1);
    expect(counted).toMatchObject({ tightener: 4 * 3, insulator: 2 * 99, staple: 2 * 99 });
  });

  it('a square of four wires, two live and one earth: at four corners both live wires and the earth wire are joined', () => {
    const paddock = ring(
      'F1',
      [
        [0, 0],
        [100, 0],
        [100, 100],
        [0, 100],
      ],
      { typeId: 'ft-4' },
    );
    // Two ends a corner, three wires each; at the gate posts the crossing's clamps do it.
    expect(amounts(drawing(paddock, ...bridgedGateway('G1', 'F1', 50))).joint).toBe(4 * 2 * 3);
  });

  it('a planned fence that is not live joins nothing of a built one', () => {
    const built = { ...square(), status: 'built' } as const;
    const dead = line(
      'F2',
      [
        [100, 100],
        [200, 200],
      ],
      { live: false },
    );
    expect(amounts(drawing(built, dead)).joint).toBeUndefined();
  });

  it('an old boundary of six plain and one barbed, not live: 6 x 1,001 m of wire and 1,001 m of barbed wire', () => {
    const old = newFenceType('old', 'Six plain and one barbed', { liveWires: 0, plainWires: 6, barbedWires: 1 });
    const counted = straight(old, { live: false });
    expect(counted['wire:steel-2.5']).toBeCloseTo(6 * 1001, 1);
    expect(counted.barbedWire).toBeCloseTo(1001, 1);
    expect(counted).toMatchObject({ tightener: 6 * 3, staple: 7 * 99 });
    expect(counted.insulator).toBeUndefined();
  });

  it('earth and plain wires of a gauge of their own are counted apart from the live ones', () => {
    const two = { ...starting('ft-boundary'), plainWireId: 'steel-2' };
    const counted = straight(two);
    expect(counted['wire:steel-2.5']).toBeCloseTo(2 * 1001, 1);
    expect(counted['wire:steel-2']).toBeCloseTo(5 * 1001, 1);
    expect(counted).toMatchObject({ tightener: 7 * 3, staple: 5 * 99 });
    const project = drawing(
      two,
      line(
        'F1',
        [
          [0, 0],
          [50, 0],
        ],
        { typeId: two.id },
      ),
    );
    const texts = takeOff({ project, survey: surveyOf(project) }).quantities.flatMap(({ pieces }) =>
      pieces.map(({ text }) => inEnglish(text)),
    );
    expect(texts).toContainEqual(expect.stringContaining('2 x 50.0 m (2 live)'));
    expect(texts).toContainEqual(expect.stringContaining('5 x 50.0 m (1 earth, 4 plain)'));
  });

  it('a type of an older file, in which nobody has said how many plain wires, counts as before', () => {
    const { plainWires: _, ...older } = starting('ft-boundary');
    expect(straight(older)['wire:steel-2.5']).toBeCloseTo(3 * 1001, 1);
  });
});

describe('an overhead crossing of 4 m, 4.5 m up (worked by hand)', () => {
  // From post to post, up and down 4.5 m, 0.3 m of allowance; the live cable has a tail of 1 m at each end besides.
  const [made, crossing] = bridgedGateway('G1', 'F1', 50);
  const over = (earth: boolean) =>
    amounts(drawing(square(), made, { ...crossing, method: 'overhead', riserHeightM: 4.5, earth }));

  it('takes an earth wire of its length with its clamps, where the earth goes across', () => {
    expect(over(true).earthCable).toBeCloseTo(4 + 2 * 4.5 + 0.3, 2);
    expect(over(true)['cable:cable-steel-2.5']).toBeCloseTo(4 + 2 * 4.5 + 0.3 + 2, 2);
    expect(over(true)).toMatchObject({ earthClamp: 2, lug: 4 });
    expect(over(true)['pipe:19']).toBeUndefined();
  });

  it('takes none where it does not', () => {
    expect(over(false).earthCable).toBeUndefined();
    expect(over(false).earthClamp).toBeUndefined();
    expect(over(false)).toMatchObject({ lug: 2 });
  });
});

describe('droppers', () => {
  it('stand between each two posts, as the fence type asks', () => {
    const make: FenceMake = { kind: 'fenceMake', id: 'make:ft-2', typeId: 'ft-2', droppersPerBay: 2 };
    expect(
      amounts(
        drawing(
          make,
          line('F1', [
            [0, 0],
            [95, 0],
          ]),
        ),
      ).dropper,
    ).toBe(2 * 10);
  });
});

describe('length over the ground', () => {
  it('is used for wire where heights are known', () => {
    // 30 m up in 100 m: Pythagoras gives 104.403 m; at some 15 m above the sea that is the same to a millimetre.
    const way = { path: [at([0, 0]), at([100, 0])], heightsM: [0, 30] };
    const project = drawing(
      line('F1', [
        [0, 0],
        [100, 0],
      ]),
      {
        kind: 'ground',
        id: 'H',
        name: 'Levelled',
        fileName: '',
        heights: { as: 'along', ways: [way], byReceiver: false },
        note: '',
      },
    );
    expect(amounts(project)['wire:steel-2.5']).toBeCloseTo(2 * (104.403 + 1), 1);
    const { quantities } = takeOff({ project, survey: surveyOf(project) });
    expect(inEnglish(quantities.find(({ key }) => key === 'wire:steel-2.5')!.pieces[0]!.text)).toContain(
      'over the ground',
    );
  });
});

describe('supply, switches and signs', () => {
  const road: Service = {
    kind: 'service',
    id: 'R',
    name: 'Old road',
    what: 'road',
    path: [at([-50, -5]), at([300, -5])],
    voltageV: null,
    buried: false,
    open: 'public',
    note: '',
  };
  const project = drawing(
    line('F1', [
      [0, 0],
      [190, 0],
    ]),
    ...bridgedGateway('G1', 'F1', 100),
    energiser('E', [0, 30]),
    leadOut('L', 'E', [
      [0, 30],
      [0, 0],
    ]),
    gateSwitch('S1', 'G1', 'start'),
    {
      kind: 'earthField',
      id: 'EF',
      energiserId: 'E',
      at: at([0, 45]),
      rods: 3,
      rodLengthM: 1.8,
      rodDiameterMm: 16,
      spacingM: 3,
      status: 'planned',
      note: '',
    },
    road,
  );
  const counted = amounts(project);

  it('are counted', () => {
    expect(counted).toMatchObject({ energiser: 1, surge: 1, 'stake:1.8': 3, stakeClamp: 3, 'switch:gateway': 1 });
    expect(counted.earthLead).toBeCloseTo(15 + 2 * 3 + 2 * 1, 2);
    const crossing = surveyOf(project).crossings.get('G1')!;
    expect(counted['cable:cable-steel-2.5']).toBeCloseTo(crossing.liveCableM + 30 + 2, 2);
    expect(counted['pipe:19']).toBeCloseTo(crossing.pipeM + 30 + 0.3, 2);
  });

  it('with a sign at both ends of 190 m of public road and no more than 50 m apart', () => {
    expect(counted.sign).toBe(5);
  });
});

describe('the hand of a gate', () => {
  it('is the side of the hinges for somebody who pushes it open', () => {
    // Line from west to east; opens to the north (left): pushed from the south, where west is on the left.
    expect(handsOf({ leaves: 1, hungFrom: 'start', opens: 'left' })).toEqual(['left']);
    expect(handsOf({ leaves: 1, hungFrom: 'end', opens: 'left' })).toEqual(['right']);
    expect(handsOf({ leaves: 1, hungFrom: 'start', opens: 'right' })).toEqual(['right']);
    expect(handsOf({ leaves: 2, hungFrom: 'start', opens: 'left' })).toHaveLength(2);
  });
});

describe('any drawing', () => {
  it('has figures that are the sums of their pieces, each of things that are there, and never negative', () => {
    fc.assert(
      fc.property(randomProject, (project) => {
        const { quantities } = takeOff({ project, survey: surveyOf(project) });
        for (const { amount, pieces, unit, key } of quantities) {
          expect(amount).toBeGreaterThan(0);
          expect(pieces.reduce((sum, piece) => sum + piece.amount, 0)).toBeCloseTo(amount, 6);
          if (unit === 'each') expect(Number.isInteger(amount), key).toBe(true);
          for (const { thingIds, text } of pieces) {
            expect(inEnglish(text)).not.toBe('');
            expect(thingIds.length).toBeGreaterThan(0);
          }
        }
      }),
      { seed: 6, numRuns: 150 },
    );
  });

  it('has no more fixed posts than ends, bends, gate posts and marks, and a stay for each strain end', () => {
    fc.assert(
      fc.property(randomProject, (project) => {
        const { quantities } = takeOff({
          project,
          survey: surveyOf(project),
          settings: { ...orderDefaults, count: 'all' },
        });
        const amount = (key: string) => quantities.find((quantity) => quantity.key === key)?.amount ?? 0;
        const vertices = [...project.fenceLine.values()].reduce((sum, { path }) => sum + path.length, 0);
        const extra = Math.ceil(amount('work:fenceKm'));
        expect(amount('strainer') + amount('gatePost') + amount('anglePost')).toBeLessThanOrEqual(
          vertices + 2 * project.gateway.size + project.post.size + extra,
        );
      }),
      { seed: 7, numRuns: 150 },
    );
  });
});
