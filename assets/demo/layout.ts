/**
 * The fences of the demo property, in metres from its middle, x to the east and y to the north. All of it is invented.
 * A public road runs along the south side. A lane winds north from it through the middle, with a branch to the east; a
 * row of paddocks lies on either side of each, and a second row behind.
 *
 * The live wires hold together in exactly two rings: around the lane, and around the front south-west paddock. Every
 * other loop is open at a corner gateway that has no crossing, or ends at a boundary that is not live.
 */
import { offsetPolyline } from '../../core/geometry/polyline.ts';
import type { Xy } from '../../core/geometry/types.ts';
import { afterMeeting, curveThrough, turnOnto } from './curves.ts';
import { Fence, type FenceKind } from './fence.ts';

const laneHalfWidthM = 6;

const roadBoundary: FenceKind = { typeId: 'ft-boundary', live: true, status: 'built' };
const oldBoundary: FenceKind = { typeId: 'ft-old-boundary', live: false, status: 'built' };
const yardFence: FenceKind = { typeId: 'ft-rails', live: false, status: 'built' };
const laneFence: FenceKind = { typeId: 'ft-4', live: true, status: 'built' };
const builtFence: FenceKind = { typeId: 'ft-2', live: true, status: 'built' };
const plannedFence: FenceKind = { typeId: 'ft-2', live: true, status: 'planned' };
const plannedSingle: FenceKind = { typeId: 'ft-1', live: true, status: 'planned' };

export type Layout = ReturnType<typeof layFences>;

export function layFences() {
  const road = curveThrough(
    [
      [-1410, -968],
      [-1000, -1014],
      [-560, -1004],
      [-80, -958],
      [420, -976],
      [960, -1004],
      [1462, -926],
    ],
    90,
  );
  const west = new Fence('West boundary', oldBoundary, [
    road[0]!,
    [-1462, -640],
    [-1502, -260],
    [-1455, 120],
    [-1492, 440],
    [-1404, 780],
    [-1312, 982],
  ]);
  const north = new Fence('North boundary', oldBoundary, [
    west.end,
    [-905, 1146],
    [-430, 1094],
    [60, 1046],
    [590, 1112],
    [1060, 1062],
    [1322, 936],
  ]);
  const east = new Fence('East boundary', oldBoundary, [
    road.at(-1)!,
    [1492, -540],
    [1532, -150],
    [1468, 262],
    [1420, 610],
    north.end,
  ]);

  // The lane and its branch: three fences, one on the west, two that turn the corner at the branch.
  const lane = curveThrough(
    [
      [-242, -1020],
      [-226, -860],
      [-150, -640],
      [-92, -420],
      [-108, -200],
      [-168, 10],
      [-150, 230],
      [-62, 430],
      [18, 620],
      [44, 790],
      [38, 900],
    ],
    48,
  );
  const branch = curveThrough(
    [
      [-168, 6],
      [40, 40],
      [300, 22],
      [560, -46],
      [800, -42],
      [990, 12],
    ],
    52,
  );
  const westSide = offsetPolyline(lane, laneHalfWidthM);
  const eastSide = offsetPolyline(lane, -laneHalfWidthM);
  const branchNorth = offsetPolyline(branch, laneHalfWidthM);
  const branchSouth = offsetPolyline(branch, -laneHalfWidthM);

  const fromRoad = (side: readonly Xy[]) => afterMeeting(road, side);
  const laneWest = new Fence('Lane west side', laneFence, fromRoad(westSide));
  const laneSouth = new Fence(
    'Lane east side and branch south side',
    laneFence,
    turnOnto(fromRoad(eastSide), branchSouth),
  );
  const laneNorth = new Fence(
    'Branch north side and lane east side',
    laneFence,
    turnOnto(branchNorth.toReversed(), eastSide),
  );
  const laneTop = new Fence('Lane head', laneFence, [laneWest.end, laneNorth.end]);
  const branchEnd = new Fence('Branch end', laneFence, [laneSouth.end, laneNorth.start]);

  const roadWest = new Fence('Road boundary west part', roadBoundary, [
    ...road.filter(([x]) => x < laneWest.start[0] - 1),
    laneWest.start,
    laneSouth.start,
  ]);
  const roadEast = new Fence('Road boundary east part', oldBoundary, [
    laneSouth.start,
    ...road.filter(([x]) => x > laneSouth.start[0] + 1),
  ]);

  const leadOutEnd = laneWest.meet([-230, -904]);

  // West of the lane: six bands, each parted into a front and a back paddock.
  const w1 = new Fence('West 1', builtFence, [
    laneWest.meet([-160, -655]),
    [-520, -694],
    [-985, -640],
    west.meet([-1462, -668]),
  ]);
  const w2 = new Fence('West 2', builtFence, [
    laneWest.meet([-100, -335]),
    [-470, -302],
    [-905, -346],
    west.meet([-1484, -292]),
  ]);
  const w3 = new Fence('West 3', builtFence, [
    laneWest.meet([-168, -30]),
    [-560, 34],
    [-1010, 8],
    west.meet([-1458, 62]),
  ]);
  const w4 = new Fence('West 4', builtFence, [
    laneWest.meet([-138, 296]),
    [-600, 352],
    [-1050, 326],
    west.meet([-1466, 404]),
  ]);
  const w5 = new Fence('West 5', plannedFence, [
    laneWest.meet([20, 648]),
    [-350, 694],
    [-800, 698],
    west.meet([-1434, 742]),
  ]);
  const wc0 = new Fence('Front and back west 1', builtFence, [
    roadWest.meet([-810, -1004]),
    [-792, -850],
    w1.meet([-764, -668]),
  ]);
  const wc1 = new Fence('Front and back west 2', builtFence, [w1.meet([-846, -656]), w2.meet([-806, -336])]);
  const wc2 = new Fence('Front and back west 3', builtFence, [
    w2.meet([-702, -325]),
    [-716, -150],
    w3.meet([-744, 23]),
  ]);
  const wc3 = new Fence('Front and back west 4', builtFence, [w3.meet([-830, 19]), w4.meet([-792, 341])]);
  const wc4 = new Fence('Front and back west 5', plannedFence, [w4.meet([-722, 345]), w5.meet([-692, 697])]);
  const wc5 = new Fence('Front and back west 6', plannedFence, [
    w5.meet([-768, 698]),
    [-745, 880],
    north.meet([-708, 1090]),
  ]);

  // South of the branch: columns that run down to the road.
  const s1 = new Fence('South 1', builtFence, [
    laneSouth.meet([138, 32]),
    [152, -300],
    [118, -630],
    roadEast.meet([134, -970]),
  ]);
  const s2 = new Fence('South 2', builtFence, [
    laneSouth.meet([522, -44]),
    [548, -330],
    [520, -650],
    roadEast.meet([532, -980]),
  ]);
  const s3 = new Fence('South 3', plannedFence, [laneSouth.end, [1012, -300], [984, -640], roadEast.meet([992, -990])]);
  const sc0 = new Fence('Front and back south 1', builtFence, [
    laneSouth.meet([-92, -476]),
    [20, -512],
    s1.meet([132, -500]),
  ]);
  const sc1 = new Fence('Front and back south 2', builtFence, [s1.meet([126, -556]), s2.meet([528, -532])]);
  const sc2 = new Fence('Front and back south 3', plannedSingle, [
    s2.meet([536, -470]),
    [760, -515],
    s3.meet([998, -498]),
  ]);
  const sc3 = new Fence('Front and back south 4', plannedSingle, [
    s3.meet([992, -566]),
    [1240, -520],
    east.meet([1476, -548]),
  ]);

  // North of the branch: columns that run up to the north boundary.
  const n1 = new Fence('North 1', plannedFence, [
    laneNorth.meet([182, 45]),
    [196, 330],
    [232, 640],
    north.meet([248, 1066]),
  ]);
  const n2 = new Fence('North 2', plannedFence, [
    laneNorth.meet([604, -42]),
    [622, 300],
    [652, 640],
    north.meet([640, 1086]),
  ]);
  const n3 = new Fence('North 3', plannedFence, [laneNorth.start, [1012, 330], [1044, 660], north.meet([1030, 1048])]);
  const nc0 = new Fence('Front and back north 1', plannedFence, [laneNorth.meet([-22, 504]), n1.meet([216, 528])]);
  const nc1 = new Fence('Front and back north 2', plannedFence, [n1.meet([224, 582]), [430, 520], n2.meet([642, 536])]);
  const nc2 = new Fence('Front and back north 3', plannedSingle, [n2.meet([634, 476]), n3.meet([1028, 502])]);
  const nc3 = new Fence('Front and back north 4', plannedSingle, [
    n3.meet([1034, 574]),
    [1230, 540],
    east.meet([1412, 560]),
  ]);
  const laneToNorth = new Fence('Lane head to north boundary', plannedFence, [laneNorth.end, north.meet([60, 1052])]);
  const branchToEast = new Fence('Branch end to east boundary', plannedFence, [
    laneNorth.start,
    [1220, 74],
    east.meet([1444, 60]),
  ]);

  // The house yard and a holding paddock beside the lane.
  const yard = new Fence('House yard', yardFence, [
    roadWest.meet([-436, -996]),
    [-430, -868],
    [-330, -852],
    laneWest.meet([-231, -858]),
  ]);
  const holding = new Fence('Holding paddock', yardFence, [
    laneWest.meet([-208, -778]),
    [-338, -800],
    [-352, -706],
    laneWest.meet([-176, -694]),
  ]);

  return {
    ...{ roadWest, roadEast, west, north, east, laneWest, laneSouth, laneNorth, laneTop, branchEnd },
    ...{ w1, w2, w3, w4, w5, wc0, wc1, wc2, wc3, wc4, wc5 },
    ...{ s1, s2, s3, sc0, sc1, sc2, sc3, n1, n2, n3, nc0, nc1, nc2, nc3, laneToNorth, branchToEast },
    ...{ yard, holding },
    leadOutEnd,
    centreLines: { road, lane, branch },
  };
}
