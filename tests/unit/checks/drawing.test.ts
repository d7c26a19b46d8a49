import { describe, expect, it } from 'vitest';
import { newFenceType, newGateway, startingFenceTypes } from '../../../core/model/defaults.ts';
import { type Project, propertyOf, put } from '../../../core/model/project.ts';
import type { Crossing, FenceType, Service, Thing } from '../../../core/model/things.ts';
import {
  at,
  bridgedGateway,
  cutOut,
  drawing,
  energiser,
  gateway,
  leadOut,
  line,
  ring,
} from '../../support/drawings.ts';
import { findingsOf, repaired, said } from './findings.ts';

const trunk = line('T', [
  [0, 0],
  [400, 0],
]);

/** A fed trunk of 400 m, and whatever else. */
const fed = (...things: readonly (Thing | readonly Thing[])[]): Project =>
  drawing(energiser('E', [0, 0]), trunk, ...things);

const rules = (project: Project) => findingsOf(project).map(({ rule }) => rule);

describe('a sound drawing', () => {
  it('gives no finding but what cannot be known', () => {
    const sound = fed(
      line('S', [
        [200, 0],
        [200, 300],
      ]),
      bridgedGateway('G', 'T', 100),
    );
    expect(findingsOf(sound).filter(({ severity }) => severity !== 'notKnown')).toEqual([]);
  });

  it('may be drawn across the 180 meridian', () => {
    const project = drawing(
      { ...propertyOf(drawing()), origin: [179.999, -20] },
      {
        ...trunk,
        path: [
          [179.995, -20],
          [-179.995, -20],
        ],
      },
      { ...energiser('E', [0, 0]), at: [179.995, -20] },
    );
    expect(findingsOf(project).filter(({ severity }) => severity !== 'notKnown')).toEqual([]);
  });
});

describe('nothing, or nothing to feed it', () => {
  it('hints where to begin on an empty property', () => {
    const [finding] = said(drawing(), 'emptyProject');
    expect(finding?.severity).toBe('hint');
    expect(rules(drawing())).toEqual(['emptyProject']);
  });

  it('says once that there is no energiser', () => {
    expect(
      rules(
        drawing(
          trunk,
          line('U', [
            [0, 90],
            [90, 90],
          ]),
        ),
      ),
    ).toEqual(['noEnergiser']);
  });

  it('says that an energiser feeds nothing, and not of each line that it is dead', () => {
    const project = drawing(trunk, energiser('E', [0, -50]));
    expect(rules(project).filter((rule) => rule !== 'earthElectrodeDistance')).toEqual(['energiserTouchesNothing']);
  });
});

describe('lines', () => {
  it('finds one without length, and deletes it', () => {
    const project = fed(
      line('Z', [
        [50, 50],
        [50, 50],
      ]),
    );
    expect(said(project, 'lineWithoutLength').map(({ thingIds }) => thingIds)).toEqual([['Z']]);
    expect(repaired(project, 'lineWithoutLength').fenceLine.has('Z')).toBe(false);
  });

  it('finds coordinates that are no place on earth, on a line, a post and a service', () => {
    const bad = line('B', [[0, 0]], { path: [at([0, 0]), [200, 95]] });
    const post = { kind: 'post', id: 'P', name: 'P', at: [Number.NaN, 0], role: 'other', note: '' } as const;
    const project = fed(bad, post, service('R', 'road', [[0, 0]], { path: [[0, Infinity]] }));
    expect(said(project, 'coordinatesOutOfRange').map(({ thingIds }) => thingIds[0])).toEqual(['B', 'P', 'R']);
    expect(said(project, 'coordinatesOutOfRange')[0]!.message).toContain('longitude 200, latitude 95');
  });

  it('finds doubled corners and takes them out, also at the end of a closed line', () => {
    const open = fed(
      line('D', [
        [0, 50],
        [90, 50],
        [90, 50],
        [180, 50],
        [180, 50],
      ]),
    );
    expect(said(repaired(open, 'duplicateVertices'), 'duplicateVertices')).toEqual([]);
    expect(repaired(open, 'duplicateVertices').fenceLine.get('D')!.path).toHaveLength(3);
    const closed = fed(
      ring('D', [
        [0, 50],
        [90, 50],
        [90, 140],
        [0, 50],
      ]),
    );
    const path = repaired(closed, 'duplicateVertices').fenceLine.get('D')!.path;
    expect(path).toHaveLength(4);
    expect(path[0]).toEqual(path.at(-1));
  });

  it('finds a line that crosses itself, and joins it there', () => {
    const project = fed(
      line('X', [
        [200, 0],
        [200, 100],
        [300, 100],
        [150, 50],
      ]),
    );
    expect(said(project, 'selfCrossingLine')).toHaveLength(1);
    expect(said(repaired(project, 'selfCrossingLine'), 'selfCrossingLine')).toEqual([]);
  });

  it('finds two live lines that cross without joining, and joins them; not where one is dead', () => {
    const other = line('O', [
      [200, -60],
      [210, 60],
    ]);
    const project = fed(other);
    const [finding] = said(project, 'linesCrossUnjoined');
    expect(finding?.id).toBe('linesCrossUnjoined:O,T');
    const after = repaired(project, 'linesCrossUnjoined');
    expect(said(after, 'linesCrossUnjoined')).toEqual([]);
    expect(said(after, 'deadPart')).toEqual([]);
    expect(said(fed({ ...other, live: false }), 'linesCrossUnjoined')).toEqual([]);
    expect(
      said(
        fed(
          line('O', [
            [200, -60],
            [200, 0.2],
          ]),
        ),
        'linesCrossUnjoined',
      ),
    ).toEqual([]);
  });

  it('tells two crossings of the same lines apart', () => {
    const project = fed(
      line('O', [
        [100, -60],
        [110, 60],
        [200, 60],
        [210, -60],
      ]),
    );
    expect(said(project, 'linesCrossUnjoined').map(({ id }) => id)).toEqual([
      'linesCrossUnjoined:O,T',
      'linesCrossUnjoined:O,T#2',
    ]);
  });

  it('finds no crossing in an opening, where there is no wire', () => {
    const project = fed(
      line('O', [
        [200, -60],
        [200, 60],
      ]),
      bridgedGateway('G', 'T', 200),
    );
    expect(said(project, 'linesCrossUnjoined')).toEqual([]);
  });

  it('finds lines drawn on top of each other, but not a sharp corner', () => {
    expect(
      said(
        fed(
          line('O', [
            [100, 0.1],
            [200, 0.1],
          ]),
        ),
        'linesOverlap',
      ),
    ).toHaveLength(1);
    expect(
      said(
        fed(
          line('O', [
            [100, 0],
            [200, 9],
          ]),
        ),
        'linesOverlap',
      ),
    ).toEqual([]);
  });

  it.each([
    [0.2, 0],
    [0.31, 1],
    [2.9, 1],
    [3.1, 0],
  ])('takes an end %d m from a line as %d near misses', (gapM, count) => {
    expect(
      said(
        fed(
          line('N', [
            [200, gapM],
            [200, 90],
          ]),
        ),
        'endNearlyTouches',
      ),
    ).toHaveLength(count);
  });

  it('joins an end that nearly touches, and leaves one that is joined to another line', () => {
    const project = fed(
      line('N', [
        [200, 2],
        [200, 90],
      ]),
    );
    const after = repaired(project, 'endNearlyTouches');
    expect(said(after, 'endNearlyTouches')).toEqual([]);
    expect(said(after, 'deadPart')).toEqual([]);
    const corner = fed(
      line('A', [
        [200, 0],
        [200, 90],
      ]),
      line('N', [
        [200, 2],
        [290, 90],
      ]),
    );
    expect(said(corner, 'endNearlyTouches')).toEqual([]);
  });

  it('finds a fence type that is missing, and a live line of a type without live wires', () => {
    expect(
      said(
        fed(
          line(
            'U',
            [
              [0, 0],
              [0, 90],
            ],
            { typeId: 'gone' },
          ),
        ),
        'unknownFenceType',
      ),
    ).toHaveLength(1);
    const plain = { ...drawing().fenceType.get('ft-2')!, id: 'plain', liveWires: 0 };
    const dead = line(
      'U',
      [
        [0, 0],
        [0, 90],
      ],
      { typeId: 'plain', live: false },
    );
    expect(said(fed(plain, dead), 'unknownFenceType')).toEqual([]);
    expect(said(fed(plain, { ...dead, live: true }), 'unknownFenceType')).toHaveLength(1);
  });
});

describe('gateways', () => {
  it('finds one wider than its line', () => {
    const project = fed(
      line('S', [
        [200, 0],
        [200, 3],
      ]),
      gateway('G', 'S', 1.5),
    );
    expect(said(project, 'gatewayTooWide')[0]?.message).toContain('3.00 m');
  });

  it('finds one off its line and moves it on, also on a line that is not live', () => {
    for (const live of [true, false]) {
      const project = fed(
        line(
          'S',
          [
            [200, 0],
            [200, 100],
          ],
          { live },
        ),
        gateway('G', 'S', 99),
      );
      expect(said(project, 'gatewayOffLine')).toHaveLength(1);
      expect(repaired(project, 'gatewayOffLine').gateway.get('G')!.atM).toBeCloseTo(98, 6);
    }
    expect(said(fed(newGateway({ id: 'G', name: 'G', lineId: 'gone', atM: 1 })), 'gatewayOffLine')).toHaveLength(1);
  });

  it('finds two that overlap, not two that share a post', () => {
    expect(said(fed(gateway('G', 'T', 100), gateway('H', 'T', 103)), 'gatewaysOverlap')).toHaveLength(1);
    expect(said(fed(gateway('G', 'T', 100), gateway('H', 'T', 104)), 'gatewaysOverlap')).toEqual([]);
  });

  it('finds a line that touches inside an opening', () => {
    const project = fed(
      bridgedGateway('G', 'T', 200),
      line('S', [
        [200, 0],
        [200, 90],
      ]),
    );
    expect(said(project, 'touchInOpening')).toHaveLength(1);
  });

  it('finds one without a crossing that cuts something off, and adds one', () => {
    const project = fed(gateway('G', 'T', 200));
    expect(said(project, 'missingCrossing')).toHaveLength(1);
    expect(said(project, 'deadPart')).toEqual([]);
    const after = repaired(project, 'missingCrossing');
    expect(after.crossing.size).toBe(1);
    expect(said(after, 'missingCrossing')).toEqual([]);
  });

  it('asks no crossing of a corner gateway whose sides are fed on their own', () => {
    const loop = line('L', [
      [0, 0],
      [0, 100],
      [400, 100],
      [400, 0],
    ]);
    expect(said(fed(loop, gateway('G', 'L', 598)), 'missingCrossing')).toEqual([]);
  });

  it('finds a crossing without a gateway and a second one', () => {
    const [made, crossing] = bridgedGateway('G', 'T', 200);
    expect(said(fed({ ...crossing, gatewayId: 'gone' }), 'crossingLoose')).toHaveLength(1);
    const second: Crossing = { ...crossing, id: 'again' };
    expect(said(fed(made, crossing, second), 'crossingLoose')[0]?.message).toContain('two crossings');
  });
});

describe('switches', () => {
  it('finds one in no wire and deletes it', () => {
    const places = [
      { on: 'line', lineId: 'gone', atM: 1 },
      { on: 'line', lineId: 'T', atM: 4000 },
      { on: 'line', lineId: 'D', atM: 10 },
      { on: 'line', lineId: 'T', atM: 200 },
    ] as const;
    const dead = line(
      'D',
      [
        [0, 50],
        [90, 50],
      ],
      { live: false },
    );
    for (const place of places) {
      const project = fed(dead, cutOut('S', place), bridgedGateway('G', 'T', 200));
      expect(said(project, 'switchDangling')).toHaveLength(1);
      expect(repaired(project, 'switchDangling').switch.size).toBe(0);
    }
  });

  it('finds two at one place', () => {
    const place = { on: 'line', lineId: 'T', atM: 90 } as const;
    expect(said(fed(cutOut('S', place), cutOut('S2', place)), 'switchUseless')).toHaveLength(1);
  });
});

describe('what is fed', () => {
  it('tells why a part is dead', () => {
    const away = line('A', [
      [0, 200],
      [90, 200],
    ]);
    expect(said(fed(away), 'deadPart')[0]?.message).toContain('joined to nothing');
    expect(
      said(
        fed(
          line('A', [
            [100, 4],
            [100, 90],
          ]),
        ),
        'deadPart',
      )[0]?.message,
    ).toContain('within 4.00 m');
    const open = cutOut('S', { on: 'line', lineId: 'T', atM: 90 }, { normally: 'open' });
    const [finding] = said(fed(open), 'deadPart');
    expect(finding?.severity).toBe('hint');
    expect(finding?.message).toContain('S is normally off');
  });

  it('finds a lead-out that ends at nothing, and one without its energiser', () => {
    const loose = leadOut('L', 'E', [
      [0, 0],
      [0, -90],
    ]);
    expect(said(fed(loose), 'leadOutLoose')).toHaveLength(1);
    expect(said(fed({ ...loose, energiserId: 'gone' }), 'leadOutLoose')).toHaveLength(1);
  });

  it('finds a section over its limits and a run that nothing can cut', () => {
    const limits = { ...propertyOf(drawing()).divide, maxSectionM: 300, maxGateways: 1 };
    const project = put(fed(bridgedGateway('G', 'T', 10), bridgedGateway('H', 'T', 20)), {
      ...propertyOf(drawing()),
      divide: limits,
    });
    const [over] = said(project, 'sectionOverLimit');
    expect(over?.message).toContain('over the limit of 300 m');
    expect(over?.message).toContain('2 gateways');
    expect(said(project, 'runTooLong')).toHaveLength(1);
    const place = { kind: 'switchCandidate', id: 'C', lineId: 'T', atM: 200, cost: null } as const;
    expect(said(put(project, place), 'runTooLong')).toEqual([]);
  });
});

describe('trenches', () => {
  it('finds a bend tighter than the pipe allows', () => {
    const [made, crossing] = bridgedGateway('G', 'T', 200);
    expect(said(fed(made, { ...crossing, bowM: 2, minBendRadiusM: 3 }), 'bendTooTight')).toHaveLength(1);
    expect(said(fed(made, { ...crossing, bowM: 2, minBendRadiusM: 1 }), 'bendTooTight')).toEqual([]);
  });

  it('finds two trenches that cross, not two that end at one post', () => {
    const [g, bowedOut] = bridgedGateway('G', 'T', 198);
    const [h, other] = bridgedGateway('H', 'S', 3);
    const spur = line('S', [
      [200.2, 0],
      [200.2, 90],
    ]);
    const crossed = fed(spur, g, { ...bowedOut, bowM: 3, bowSide: 'left' }, h, { ...other, bowM: 3, bowSide: 'left' });
    expect(said(crossed, 'trenchNearTrench')).toHaveLength(1);
    const neighbours = fed(bridgedGateway('G', 'T', 198), bridgedGateway('H', 'T', 202));
    expect(said(neighbours, 'trenchNearTrench')).toEqual([]);
  });

  it('finds a trench near a buried service, with the clearance of its kind', () => {
    const gated = bridgedGateway('G', 'T', 200, { opens: 'left' });
    const pipe = (y: number) =>
      service(
        'W',
        'waterPipe',
        [
          [0, y],
          [400, y],
        ],
        { buried: true },
      );
    expect(said(fed(gated, pipe(1.4)), 'trenchNearService')).toHaveLength(1);
    expect(said(fed(gated, pipe(2)), 'trenchNearService')).toEqual([]);
    expect(said(fed(gated, { ...pipe(2), what: 'powerLine' }), 'trenchNearService')).toEqual([]);
    expect(said(fed(gated, { ...pipe(1.9), what: 'powerLine' }), 'trenchNearService')).toHaveLength(1);
    expect(said(fed(gated, { ...pipe(1.4), buried: false }), 'trenchNearService')).toEqual([]);
  });

  it('says that its clearances are assumed', () => {
    const gated = bridgedGateway('G', 'T', 200, { opens: 'left' });
    const drain = service(
      'W',
      'drain',
      [
        [0, 1.2],
        [400, 1.2],
      ],
      { buried: true },
    );
    const [finding] = said(fed(gated, drain), 'trenchNearService');
    expect(finding?.message).toContain('0.50 m is assumed by this program to be the least: check local rules');
  });
});

describe('fence types whose name says more wires than are entered', () => {
  /** A type as files of older versions hold it, without the field. */
  const older = (name: string, figures: Partial<FenceType> = {}): FenceType => {
    const { plainWires: _, ...type } = newFenceType('old', name, { liveWires: 2, earthWires: 1, ...figures });
    return type;
  };
  const used = (type: FenceType) => fed(type, { ...trunk, typeId: type.id });

  it.each([
    ['Boundary, seven wires, two live, one earth', {}, 4],
    ['Four wires, two live, one earth', {}, 1],
    ['Old boundary, six plain and one barbed, not live', { liveWires: 0, earthWires: 0, barbedWires: 1 }, 6],
    ['7-wire', {}, 4],
    ['Deer fence, 2 m high, 10 strands', {}, 7],
  ])('"%s" is offered its plain wires', (name, figures, plainWires) => {
    const project = used(older(name, figures));
    const [finding] = said(project, 'plainWiresNotEntered');
    expect(finding?.message).toContain(name);
    expect(finding?.message).toContain('the order is short of them');
    const after = repaired(project, 'plainWiresNotEntered');
    expect(after.fenceType.get('old')!.plainWires).toBe(plainWires);
    expect(said(after, 'plainWiresNotEntered')).toEqual([]);
  });

  it.each(['Three wires', 'Two live wires', 'Steel 2.5 mm wire', 'Boundary 7', 'Netting', 'One live, one earth'])(
    '"%s" says nothing more than is entered',
    (name) => {
      expect(said(used(older(name)), 'plainWiresNotEntered')).toEqual([]);
    },
  );

  it('of a type that no line uses, and where somebody has entered them, even as none, nothing is said', () => {
    expect(said(fed(older('Seven wires')), 'plainWiresNotEntered')).toEqual([]);
    expect(said(used({ ...older('Seven wires'), plainWires: 0 }), 'plainWiresNotEntered')).toEqual([]);
    for (const type of startingFenceTypes()) expect(said(used(type), 'plainWiresNotEntered'), type.name).toEqual([]);
  });
});

function service(
  id: string,
  what: Service['what'],
  path: readonly (readonly [number, number])[],
  changes: Partial<Service> = {},
): Service {
  const plain = { name: id, voltageV: null, buried: false, open: null, note: '' };
  return { kind: 'service', id, what, path: path.map(at), ...plain, ...changes };
}
