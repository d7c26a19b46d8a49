import { describe, expect, it } from 'vitest';
import { projectOf, put } from '../../../core/model/project.ts';
import type { Thing } from '../../../core/model/things.ts';
import { buildNetwork } from '../../../core/network/buildNetwork.ts';
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
  property,
  ring,
  strainer,
} from '../../support/drawings.ts';
import { networkText, problemText } from '../../support/networkText.ts';

const network = (...things: readonly (Thing | readonly Thing[])[]) => buildNetwork(drawing(...things));
const text = (...things: readonly (Thing | readonly Thing[])[]) => networkText(network(...things));

describe('joints', () => {
  it('is one run for one line, from its start to its end', () => {
    const { nodes, edges, edgesAt } = network(
      line('a', [
        [0, 0],
        [300, 400],
      ]),
    );
    expect(nodes.map(({ key, roles }) => [key, roles])).toEqual([
      ['end:a:start', ['lineEnd']],
      ['end:a:end', ['lineEnd']],
    ]);
    expect(edges).toHaveLength(1);
    expect(edges[0]).toMatchObject({ kind: 'run', lineId: 'a', from: 0, to: 1, fromM: 0, liveWires: 2 });
    expect(edges[0]).toHaveProperty('lengthM', expect.closeTo(500, 4));
    expect(edgesAt).toEqual([[0], [0]]);
  });

  it('splits a line where the end of another touches it', () => {
    expect(
      text(
        line('a', [
          [0, 0],
          [100, 0],
        ]),
        line('b', [
          [40, 0],
          [40, 70],
        ]),
      ),
    ).toEqual([
      'run a: end:a:start - end:b:start 40.0',
      'run a: end:b:start - end:a:end 60.0',
      'run b: end:b:start - end:b:end 70.0',
    ]);
  });

  it('joins at a vertex in the middle of both', () => {
    const joined = network(
      line('a', [
        [0, 0],
        [50, 0],
        [100, 0],
      ]),
      line('b', [
        [50, -50],
        [50, 0.1],
        [50, 80],
      ]),
    );
    expect(networkText(joined)).toEqual([
      'run a: end:a:start - join:a:b 50.0',
      'run a: join:a:b - end:a:end 50.0',
      'run b: end:b:start - join:a:b 50.1',
      'run b: join:a:b - end:b:end 79.9',
    ]);
    expect(joined.nodes.find(({ key }) => key === 'join:a:b')!.roles).toEqual(['junction']);
  });

  it('does not join lines that cross where neither has a vertex', () => {
    expect(
      text(
        line('a', [
          [0, 0],
          [100, 0],
        ]),
        line('b', [
          [50, -50],
          [50, 50],
        ]),
      ),
    ).toEqual(['run a: end:a:start - end:a:end 100.0', 'run b: end:b:start - end:b:end 100.0']);
  });

  it('joins across 0.25 m and not across 0.35 m with a tolerance of 0.3 m', () => {
    const a = line('a', [
      [0, 0],
      [100, 0],
    ]);
    expect(
      text(
        a,
        line('b', [
          [40, 0.25],
          [40, 70],
        ]),
      ),
    ).toHaveLength(3);
    expect(
      text(
        a,
        line('b', [
          [40, 0.35],
          [40, 70],
        ]),
      ),
    ).toHaveLength(2);
    expect(
      text(
        property({ snapToleranceM: 0.4 }),
        a,
        line('b', [
          [40, 0.35],
          [40, 70],
        ]),
      ),
    ).toHaveLength(3);
  });

  it('joins at the vertex where one is within the tolerance, so that no run of a hand width is made', () => {
    expect(
      text(
        line('a', [
          [0, 0],
          [50, 0],
          [100, 0],
        ]),
        line('b', [
          [50.2, 0.1],
          [50.2, 60],
        ]),
      ),
    ).toEqual([
      'run a: end:a:start - end:b:start 50.0',
      'run a: end:b:start - end:a:end 50.0',
      'run b: end:b:start - end:b:end 59.9',
    ]);
  });

  it('makes one joint of an end that runs in close through several vertices', () => {
    const b = line('b', [
      [40, 60],
      [40, 0.28],
      [40, 0.18],
      [40, 0.08],
      [40, 0],
    ]);
    expect(
      text(
        line('a', [
          [0, 0],
          [100, 0],
        ]),
        b,
      ),
    ).toEqual([
      'run a: end:a:start - end:b:end 40.0',
      'run a: end:b:end - end:a:end 60.0',
      'run b: end:b:start - end:b:end 60.0',
    ]);
  });

  it('does not take a way there and back for a ring', () => {
    const back = network(
      line('a', [
        [0, 0],
        [100, 0],
        [0, 0],
      ]),
    );
    expect(networkText(back)).toEqual(['run a: end:a:end - end:a:end 200.0']);
    expect(back.nodes[0]!.roles).toEqual(['lineEnd', 'junction']);
  });

  it('joins a line to itself where a vertex comes back to it', () => {
    const lasso = line('a', [
      [0, 0],
      [100, 0],
      [100, 50],
      [60, 50],
      [60, 0],
    ]);
    expect(text(lasso)).toEqual(['run a: end:a:end - end:a:end 180.0', 'run a: end:a:start - end:a:end 60.0']);
  });

  it('does not join a line to itself at a sharp corner or along close vertices', () => {
    expect(
      text(
        line('a', [
          [0, 0],
          [0.2, 0],
          [0.4, 0],
          [0.5, 0.1],
          [100, 0],
        ]),
      ),
    ).toHaveLength(1);
    expect(
      text(
        line('a', [
          [0, 0],
          [100, 0],
          [0, 5],
        ]),
      ),
    ).toHaveLength(1);
  });

  it('is one run from a node to itself for a closed line', () => {
    const { nodes, edges, edgesAt } = network(
      ring('a', [
        [0, 0],
        [100, 0],
        [100, 100],
        [0, 100],
      ]),
    );
    expect(nodes.map(({ roles }) => roles)).toEqual([[]]);
    expect(edges).toHaveLength(1);
    expect(edges[0]).toMatchObject({ from: 0, to: 0 });
    expect(edgesAt).toEqual([[0]]);
  });

  it('splits a ring at each line that touches it, also at its closing vertex', () => {
    const square = ring('a', [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ]);
    expect(
      text(
        square,
        line('b', [
          [-50, 0],
          [0, 0],
        ]),
        line('c', [
          [100, 60],
          [200, 60],
        ]),
      ),
    ).toEqual([
      'run a: end:b:end - end:c:start 160.0',
      'run a: end:c:start - end:b:end 240.0',
      'run b: end:b:start - end:b:end 50.0',
      'run c: end:c:start - end:c:end 100.0',
    ]);
  });

  it('shares a fence between two paddocks', () => {
    const left = ring('left', [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ]);
    const right = line('right', [
      [100, 0],
      [220, 0],
      [220, 100],
      [100, 100],
    ]);
    expect(text(left, right)).toEqual([
      'run left: end:left:end - end:right:start 100.0',
      'run left: end:right:end - end:left:end 200.0',
      'run left: end:right:start - end:right:end 100.0',
      'run right: end:right:start - end:right:end 340.0',
    ]);
  });

  it('leaves lines out that are not live', () => {
    const dead = line(
      'b',
      [
        [40, 0],
        [40, 70],
      ],
      { live: false },
    );
    expect(
      text(
        line('a', [
          [0, 0],
          [100, 0],
        ]),
        dead,
      ),
    ).toEqual(['run a: end:a:start - end:a:end 100.0']);
  });

  it('makes strainers and angle posts nodes, and joins nothing by them', () => {
    const lines = [
      line('a', [
        [0, 0],
        [100, 0],
      ]),
      line('b', [
        [50, -50],
        [50, 50],
      ]),
    ];
    expect(
      text(lines, strainer('p', [50, 0.1]), strainer('q', [20, 0], 'angle'), strainer('r', [70, 0], 'other')),
    ).toEqual([
      'run a: end:a:start - post:q 20.0',
      'run a: post:p - end:a:end 50.0',
      'run a: post:q - post:p 30.0',
      'run b: end:b:start - post:p#2 50.1',
      'run b: post:p#2 - end:b:end 49.9',
    ]);
  });

  it('works across the 180 meridian', () => {
    const path = (lon1: number, lon2: number) =>
      [
        [lon1, -17],
        [lon2, -17],
      ] as const;
    const over = buildNetwork(
      projectOf([
        property({ origin: [180, -17] }),
        { ...line('a', []), path: path(179.999, -179.999) },
        { ...line('b', []), path: path(-179.999, 180.002) },
      ]),
    );
    // 0.002 degrees of the parallel of 17 degrees south: a cos(lat) / sqrt(1 - e2 sin2(lat)) a degree, WGS 84.
    expect(networkText(over)).toEqual(['run a: end:a:start - end:a:end 213.0', 'run b: end:a:end - end:b:end 106.5']);
  });
});

describe('gateways', () => {
  const square = ring('sq', [
    [0, 0],
    [100, 0],
    [100, 100],
    [0, 100],
  ]);

  it('stops the wires at the posts', () => {
    expect(text(square, gateway('G', 'sq', 50))).toEqual(
      ['run sq: gate:G:end - end:sq:end 348.0', 'run sq: end:sq:end - gate:G:start 48.0'].sort(),
    );
  });

  it('is bridged by its crossing alone', () => {
    const made = network(square, bridgedGateway('G', 'sq', 50));
    expect(networkText(made)).toContain('crossing G: gate:G:start - gate:G:end');
    const crossing = made.edges.find(({ kind }) => kind === 'crossing');
    // Bow 1 m on a chord of 4 m: r = 2.5 m, angle 4 atan(1/2), trench 4.6365; pipe + 2 x 1.2 + 0.3; cable + 2.
    expect(crossing).toHaveProperty('cableLengthM', expect.closeTo(2.5 * 4 * Math.atan(0.5) + 4.7, 4));
  });

  it('joins what touches a gate post, and nothing inside the opening', () => {
    const a = line('a', [
      [0, 0],
      [100, 0],
    ]);
    const beside = network(
      a,
      gateway('G', 'a', 50),
      line('b', [
        [48.1, 0.1],
        [48, 60],
      ]),
    );
    expect(beside.nodes.find(({ key }) => key === 'gate:G:start')!.roles).toContain('junction');
    expect(problemText(beside)).toEqual([]);
    const inside = network(
      a,
      gateway('G', 'a', 50),
      line('b', [
        [49, 0],
        [48, 60],
      ]),
    );
    expect(inside.nodes.some(({ roles }) => roles.includes('junction'))).toBe(false);
    expect(problemText(inside)).toEqual(['touchInOpening G b']);
  });

  it('leaves a ring joined that closes within the tolerance', () => {
    const nearly = line('n', [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
      [0, 0.2],
    ]);
    expect(text(nearly, bridgedGateway('G', 'n', 50))).toEqual([
      'crossing G: gate:G:start - gate:G:end',
      'run n: end:n:end - gate:G:start 48.0',
      'run n: gate:G:end - end:n:end 347.8',
    ]);
  });

  it('joins a line to its own gate post where it comes back to it', () => {
    const back = line('n', [
      [0, 0],
      [100, 0],
      [100, 100],
      [48, 100],
      [48, 0],
    ]);
    expect(text(back, gateway('G', 'n', 50))).toEqual([
      'run n: end:n:start - gate:G:start 48.0',
      'run n: gate:G:end - gate:G:start 300.0',
    ]);
  });

  it('may open a closed line over its closing vertex', () => {
    expect(text(square, bridgedGateway('G', 'sq', 1))).toEqual([
      'crossing G: gate:G:start - gate:G:end',
      'run sq: gate:G:end - gate:G:start 396.0',
    ]);
  });

  it('lets neighbours share a post', () => {
    const pair = text(
      line('a', [
        [0, 0],
        [100, 0],
      ]),
      bridgedGateway('G', 'a', 50),
      bridgedGateway('H', 'a', 54),
    );
    expect(pair).toEqual([
      'crossing G: gate:G:start - gate:G:end',
      'crossing H: gate:G:end - gate:H:end',
      'run a: end:a:start - gate:G:start 48.0',
      'run a: gate:H:end - end:a:end 44.0',
    ]);
  });

  it('makes one post of two that overlap by no more than the tolerance', () => {
    const pair = [...bridgedGateway('G', 'a', 50), ...bridgedGateway('H', 'a', 53.8)];
    const made = network(
      line('a', [
        [0, 0],
        [100, 0],
      ]),
      pair,
    );
    expect(networkText(made)).toContain('crossing H: gate:G:end - gate:H:end');
    expect(problemText(made)).toEqual([]);
  });
});

describe('switches', () => {
  const lane = line('a', [
    [0, 0],
    [100, 0],
  ]);

  it('stands in the run outside the opening: run, switch, post', () => {
    expect(
      text(lane, bridgedGateway('G', 'a', 50), gateSwitch('S', 'G', 'start'), gateSwitch('T', 'G', 'end')),
    ).toEqual([
      'crossing G: gate:G:start - gate:G:end',
      'run a: end:a:start - switch:S 48.0',
      'run a: switch:T - end:a:end 48.0',
      'switch S: switch:S - gate:G:start',
      'switch T: switch:T - gate:G:end',
    ]);
  });

  it('leaves with the post what touches the post', () => {
    const made = text(
      lane,
      bridgedGateway('G', 'a', 50),
      gateSwitch('S', 'G', 'start'),
      line('b', [
        [48, 0],
        [48, 60],
      ]),
    );
    expect(made).toContain('run b: gate:G:start - end:b:end 60.0');
  });

  it('parts a gateway at the end of a branch from the fence it takes off from', () => {
    const branch = [
      line('b', [
        [50, 0],
        [50, 80],
      ]),
      ...bridgedGateway('G', 'b', 2),
      gateSwitch('S', 'G', 'start'),
    ];
    expect(text(lane, branch)).toEqual([
      'crossing G: gate:G:start - gate:G:end',
      'run a: end:a:start - end:b:start 50.0',
      'run a: end:b:start - end:a:end 50.0',
      'run b: gate:G:end - end:b:end 76.0',
      'switch S: end:b:start - gate:G:start',
    ]);
  });

  it('parts a branch at its take-off', () => {
    expect(
      text(
        lane,
        line('b', [
          [50, 80],
          [50, 0],
        ]),
        endSwitch('S', 'b', 'end'),
      ),
    ).toEqual([
      'run a: end:a:start - end:b:end 50.0',
      'run a: end:b:end - end:a:end 50.0',
      'run b: end:b:start - switch:S 80.0',
      'switch S: switch:S - end:b:end',
    ]);
  });

  it('cuts a line along it, from the side of its start to that of its end', () => {
    expect(text(lane, lineSwitch('S', 'a', 30))).toEqual([
      'run a: end:a:start - switch:S:joint 30.0',
      'run a: switch:S - end:a:end 70.0',
      'switch S: switch:S:joint - switch:S',
    ]);
  });

  it('takes a place along the line at a gate post as the post', () => {
    const atPost = text(lane, gateway('G', 'a', 50), lineSwitch('S', 'a', 52));
    expect(atPost).toContain('switch S: gate:G:end - switch:S');
  });

  it('stands between a lead-out and the fence', () => {
    const fed = [
      energiser('E', [0, -20]),
      leadOut('L', 'E', [
        [0, -20],
        [0, 0],
      ]),
      cutOut('S', { on: 'leadOut', leadOutId: 'L' }),
    ];
    expect(text(lane, fed)).toEqual([
      'leadOut L: energiser:E - switch:S 20.0',
      'run a: end:a:start - end:a:end 100.0',
      'switch S: switch:S - end:a:start',
    ]);
  });

  it('says where two stand one behind the other', () => {
    expect(problemText(network(lane, lineSwitch('S', 'a', 30), lineSwitch('T', 'a', 30)))).toEqual([
      'switchDoubled S T',
    ]);
  });

  it('says where a switch is bypassed', () => {
    const around = line('b', [
      [29.8, 0],
      [29.8, 5],
      [30.2, 5],
      [30.2, 0],
    ]);
    const made = network(property({ snapToleranceM: 0.1 }), lane, around, lineSwitch('S', 'a', 30));
    expect(problemText(made)).toEqual([]);
    const shorted = network(
      line('c', [
        [0, 0],
        [60, 0],
        [60, 5],
        [0, 5],
        [0, 0],
      ]),
      lineSwitch('S', 'c', 0),
    );
    expect(problemText(shorted)).toEqual([]);
    const bothSides = network(
      lane,
      line('d', [
        [30, 0],
        [30, 10],
        [30.0005, 0],
      ]),
      lineSwitch('S', 'a', 30),
    );
    expect(problemText(bothSides)).toContain('switchBypassed S');
  });
});

describe('energisers', () => {
  const lane = line('a', [
    [0, 0],
    [100, 0],
  ]);

  it('splits the run that a lead-out ends at', () => {
    const made = network(
      lane,
      energiser('E', [40, -30]),
      leadOut('L', 'E', [
        [40, -30],
        [40, 0],
      ]),
    );
    expect(networkText(made)).toEqual([
      'leadOut L: energiser:E - leadOut:L 30.0',
      'run a: end:a:start - leadOut:L 40.0',
      'run a: leadOut:L - end:a:end 60.0',
    ]);
    expect(made.sources).toEqual([
      { energiserId: 'E', node: made.nodes.findIndex(({ key }) => key === 'energiser:E') },
    ]);
  });

  it('feeds the line that it stands on where it has no lead-out', () => {
    const made = network(lane, energiser('E', [40, 0.2]));
    expect(networkText(made)).toEqual(['run a: end:a:start - energiser:E 40.0', 'run a: energiser:E - end:a:end 60.0']);
    const away = network(lane, energiser('E', [40, 0.4]));
    expect(away.sources).toEqual([{ energiserId: 'E', node: null }]);
    expect(problemText(away)).toEqual(['energiserTouchesNothing E']);
  });

  it('says where a lead-out touches nothing, begins elsewhere or has no energiser', () => {
    const short = network(
      lane,
      energiser('E', [40, -30]),
      leadOut('L', 'E', [
        [40, -30],
        [40, -2],
      ]),
    );
    expect(problemText(short)).toEqual(['leadOutTouchesNothing L E', 'energiserTouchesNothing E']);
    const far = network(
      lane,
      energiser('E', [40, -30]),
      leadOut('L', 'E', [
        [45, -30],
        [40, 0],
      ]),
    );
    expect(problemText(far)).toEqual(['leadOutStartsElsewhere L E']);
    expect(far.problems[0]!.lengthM).toBeCloseTo(5, 3);
    expect(far.sources[0]!.node).not.toBeNull();
    const stray = network(
      lane,
      leadOut('L', 'gone', [
        [45, -30],
        [40, 0],
      ]),
    );
    expect(problemText(stray)).toEqual(['leadOutWithoutEnergiser L']);
  });

  it('does not feed into an opening', () => {
    const made = network(lane, gateway('G', 'a', 50), energiser('E', [50, 0]));
    expect(problemText(made)).toEqual(['touchInOpening G E', 'energiserTouchesNothing E']);
  });
});

describe('bad input', () => {
  const lane = line('a', [
    [0, 0],
    [100, 0],
  ]);

  it.each([
    ['no vertices', { ...line('b', []), path: [] }, 'lineNotOnEarth b'],
    ['one vertex', line('b', [[5, 5]]), 'lineNotOnEarth b'],
    ['a latitude past the pole', { ...line('b', []), path: [at([0, 0]), [172, 95] as const] }, 'lineNotOnEarth b'],
    [
      'a coordinate that is no number',
      { ...line('b', []), path: [at([0, 0]), [Number.NaN, -43] as const] },
      'lineNotOnEarth b',
    ],
    [
      'no length',
      line('b', [
        [50, 0],
        [50, 0],
        [50, 0],
      ]),
      'lineWithoutLength b',
    ],
    [
      'an unknown fence type',
      line(
        'b',
        [
          [0, 9],
          [9, 9],
        ],
        { typeId: 'gone' },
      ),
      'lineWithoutLiveWires b',
    ],
    ['a gateway on no line', gateway('G', 'gone', 50), 'gatewayWithoutLine G'],
    ['a gateway without a width', gateway('G', 'a', 50, { widthM: 0 }), 'gatewayWithoutWidth G'],
    [
      'a gateway with a width that is no number',
      gateway('G', 'a', 50, { widthM: Number.NaN }),
      'gatewayWithoutWidth G',
    ],
    ['a gateway over the end', gateway('G', 'a', 99), 'gatewayBeyondLine G a'],
    ['a gateway past the end', gateway('G', 'a', 130), 'gatewayBeyondLine G a'],
    ['a gateway wider than its line', gateway('G', 'a', 50, { widthM: 120 }), 'gatewayWiderThanLine G a'],
    ['a crossing of no gateway', bridgedGateway('G', 'a', 50)[1], 'crossingWithoutGateway X-G'],
    ['a switch on no line', lineSwitch('S', 'gone', 5), 'switchNowhere S'],
    ['a switch at no gateway', gateSwitch('S', 'gone', 'end'), 'switchNowhere S'],
    ['a switch at no lead-out', cutOut('S', { on: 'leadOut', leadOutId: 'gone' }), 'switchNowhere S'],
    ['a switch past the end', lineSwitch('S', 'a', 101), 'switchNowhere S a'],
    ['a switch at a place that is no number', lineSwitch('S', 'a', Number.NaN), 'switchNowhere S a'],
    ['an energiser off the earth', energiser('E', [0, 0], { at: [0, 91] }), 'energiserNotOnEarth E'],
  ])('names %s and keeps the rest', (_, thing, problem) => {
    const made = network(lane, thing);
    expect(problemText(made)).toEqual([problem]);
    const whole = made.edges.filter((edge) => edge.kind === 'run' && edge.lineId === 'a');
    expect(whole.every((edge) => edge.kind === 'run' && edge.lengthM > 0)).toBe(true);
  });

  it('keeps doubled vertices from making a difference', () => {
    const doubled = line('a', [
      [0, 0],
      [0, 0],
      [60, 0],
      [60, 0],
      [60, 0],
      [100, 0],
      [100, 0],
    ]);
    expect(
      text(
        doubled,
        line('b', [
          [60, 0],
          [60, 50],
        ]),
      ),
    ).toEqual([
      'run a: end:a:start - end:b:start 60.0',
      'run a: end:b:start - end:a:end 40.0',
      'run b: end:b:start - end:b:end 50.0',
    ]);
  });

  it('cuts an opening off at the end of its line', () => {
    const made = network(lane, gateway('G', 'a', 99));
    expect(networkText(made)).toEqual(['run a: end:a:start - gate:G:start 97.0']);
    expect(made.problems[0]!.lengthM).toBeCloseTo(1, 3);
  });

  it('opens the whole of a line that is narrower than its gateway', () => {
    expect(text(lane, bridgedGateway('G', 'a', 50, { widthM: 120 }))).toEqual([
      'crossing G: gate:G:start - gate:G:end',
    ]);
  });

  it('names two gateways that overlap, by how much, and opens both', () => {
    const made = network(lane, gateway('G', 'a', 50), gateway('H', 'a', 52));
    expect(problemText(made)).toEqual(['gatewaysOverlap G H']);
    expect(made.problems[0]!.lengthM).toBeCloseTo(2, 3);
    expect(networkText(made)).toEqual(['run a: end:a:start - gate:G:start 48.0', 'run a: gate:H:end - end:a:end 46.0']);
  });

  it('names a second crossing of a gateway and leaves it out', () => {
    const [made, crossing] = bridgedGateway('G', 'a', 50);
    const two = network(lane, made, crossing, { ...crossing, id: 'Y' });
    expect(problemText(two)).toEqual(['crossingDoubled X-G Y G']);
    expect(two.edges.filter(({ kind }) => kind === 'crossing')).toHaveLength(1);
  });

  it('names switches in an opening and on a dead line', () => {
    expect(problemText(network(lane, gateway('G', 'a', 50), lineSwitch('S', 'a', 51)))).toEqual([
      'switchInOpening S G',
    ]);
    const dead = line(
      'b',
      [
        [0, 9],
        [50, 9],
      ],
      { live: false },
    );
    expect(problemText(network(dead, lineSwitch('S', 'b', 5)))).toEqual(['switchOnDeadLine S']);
  });

  it('makes an empty network of an empty project', () => {
    expect(network()).toMatchObject({ nodes: [], edges: [], edgesAt: [], sources: [], problems: [] });
  });
});

describe('keys', () => {
  it('stay the same for what an edit leaves alone', () => {
    const before = drawing(
      line('a', [
        [0, 0],
        [100, 0],
        [200, 0],
      ]),
      line('b', [
        [40, 0],
        [40, 70],
      ]),
      line('c', [
        [150, 0],
        [150, 70],
      ]),
      bridgedGateway('G', 'a', 60),
    );
    const moved = put(
      before,
      line('c', [
        [160, 0],
        [160, 70],
      ]),
      gateway('H', 'a', 180),
    );
    const keysBefore = new Set(buildNetwork(before).edges.map(({ key }) => key));
    const lost = [...keysBefore].filter((key) => !buildNetwork(moved).edges.some((edge) => edge.key === key));
    expect(lost).toEqual(['run:a:end:c:start~end:a:end']);
  });
});
