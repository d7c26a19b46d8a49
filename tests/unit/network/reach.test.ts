import { describe, expect, it } from 'vitest';
import type { Thing } from '../../../core/model/things.ts';
import { buildNetwork } from '../../../core/network/buildNetwork.ts';
import { reachOf } from '../../../core/network/reach.ts';
import {
  bridgedGateway,
  drawing,
  energiser,
  gateSwitch,
  gateway,
  leadOut,
  line,
  lineSwitch,
} from '../../support/drawings.ts';

/** Reason, lines and length of each dead part. */
function dead(...things: readonly (Thing | readonly Thing[])[]) {
  const project = drawing(...things);
  const { deadParts } = reachOf(project, buildNetwork(project));
  return deadParts.map(({ why, lineIds, lengthM }) => [why, lineIds.join(), Math.round(lengthM)]);
}

const fed = [
  energiser('E', [0, -20]),
  leadOut('L', 'E', [
    [0, -20],
    [0, 0],
  ]),
];
const lane = line('lane', [
  [0, 0],
  [100, 0],
]);

describe('dead parts', () => {
  it('are none where all is joined', () => {
    expect(
      dead(
        fed,
        lane,
        line('b', [
          [50, 0],
          [50, 60],
        ]),
      ),
    ).toEqual([]);
  });

  it('are everything where there is no energiser', () => {
    expect(
      dead(
        lane,
        line('b', [
          [50, 9],
          [50, 60],
        ]),
      ),
    ).toEqual([
      [{ code: 'noEnergiser' }, 'lane', 100],
      [{ code: 'noEnergiser' }, 'b', 51],
    ]);
  });

  it('are everything where the energiser touches nothing', () => {
    expect(dead(lane, energiser('E', [50, 5]))).toEqual([
      [{ code: 'energiserTouchesNothing', energiserId: 'E' }, 'lane', 100],
    ]);
  });

  it('lie behind open switches, all of them named', () => {
    const ring = line('ring', [
      [40, 0],
      [40, 50],
      [80, 50],
      [80, 0],
    ]);
    const open = [
      lineSwitch('S', 'ring', 20, { normally: 'open' }),
      lineSwitch('T', 'ring', 100, { normally: 'open' }),
    ];
    expect(dead(fed, lane, ring, open)).toEqual([[{ code: 'openSwitch', switchIds: ['S', 'T'] }, 'ring', 80]]);
  });

  it('lie behind a gateway that nothing crosses', () => {
    expect(dead(fed, lane, gateway('G', 'lane', 70))).toEqual([
      [{ code: 'noCrossing', gatewayIds: ['G'] }, 'lane', 28],
    ]);
    expect(dead(fed, lane, bridgedGateway('G', 'lane', 70))).toEqual([]);
  });

  it('are told what parts them from the dead part before them', () => {
    const things = [gateway('G', 'lane', 50), ...bridgedGateway('H', 'lane', 70)];
    const open = gateSwitch('S', 'H', 'start', { normally: 'open' });
    expect(dead(fed, lane, things, open)).toEqual([
      [{ code: 'noCrossing', gatewayIds: ['G'] }, 'lane', 16],
      [{ code: 'openSwitch', switchIds: ['S'] }, 'lane', 28],
    ]);
  });

  it('end near a live line without touching it', () => {
    const near = { code: 'gap', gapM: expect.closeTo(1.2, 3), lineId: 'lane' };
    expect(
      dead(
        fed,
        lane,
        line('b', [
          [50, 1.2],
          [50, 60],
        ]),
      ),
    ).toEqual([[near, 'b', 59]]);
    expect(
      dead(
        fed,
        lane,
        line('b', [
          [50, 5.2],
          [50, 60],
        ]),
      ),
    ).toEqual([[{ code: 'notJoined' }, 'b', 55]]);
  });

  it('are missed by the end of a live line', () => {
    const near = { code: 'gap', gapM: expect.closeTo(0.8, 3), lineId: 'lane' };
    expect(
      dead(
        fed,
        lane,
        line('b', [
          [100.8, -50],
          [100.8, 50],
        ]),
      ),
    ).toEqual([[near, 'b', 100]]);
  });

  it('cross a live line where neither has a vertex', () => {
    expect(
      dead(
        fed,
        lane,
        line('b', [
          [50, -60],
          [50, 60],
        ]),
      ),
    ).toEqual([[{ code: 'crossesUnjoined', lineId: 'lane' }, 'b', 120]]);
  });

  it('end in an opening, where the nearest wire is at a post', () => {
    const near = { code: 'gap', gapM: expect.closeTo(1.5, 3), lineId: 'lane' };
    expect(
      dead(
        fed,
        lane,
        bridgedGateway('G', 'lane', 70),
        line('b', [
          [69.5, 0],
          [69.5, 60],
        ]),
      ),
    ).toEqual([[near, 'b', 60]]);
  });

  it('follow one another from gap to gap', () => {
    const [b, c] = [
      line('b', [
        [50, 1],
        [50, 60],
      ]),
      line('c', [
        [50, 62],
        [90, 62],
      ]),
    ];
    expect(dead(fed, lane, c, b)).toEqual([
      [{ code: 'gap', gapM: expect.closeTo(2, 3), lineId: 'b' }, 'c', 40],
      [{ code: 'gap', gapM: expect.closeTo(1, 3), lineId: 'lane' }, 'b', 59],
    ]);
  });
});

describe('what is fed', () => {
  it('counts nodes and edges up to an open switch', () => {
    const project = drawing(fed, lane, lineSwitch('S', 'lane', 30, { normally: 'open' }));
    const network = buildNetwork(project);
    const { nodeFed, edgeFed } = reachOf(project, network);
    expect(network.edges.filter((_, index) => edgeFed[index]).map(({ key }) => key)).toEqual([
      'leadOut:L',
      'run:lane:end:lane:start~switch:S:joint',
    ]);
    expect(nodeFed.reduce((sum, one) => sum + one, 0)).toBe(3);
  });

  it('is fed from both of two energisers', () => {
    const project = drawing(fed, lane, energiser('F', [100, 0]), lineSwitch('S', 'lane', 30, { normally: 'open' }));
    expect(reachOf(project, buildNetwork(project)).deadParts).toEqual([]);
  });
});
