/** What stands on the demo property's fences and beside them. All of it is invented. */

import type { Xy } from '../../core/geometry/types.ts';
import { between } from '../../core/geometry/vector.ts';
import type { Energiser, Gateway, LineEnd, Service } from '../../core/model/things.ts';
import type { Fence } from './fence.ts';
import type { Layout } from './layout.ts';

export interface PlacedGateway {
  readonly fence: Fence;
  /** A point near which it is, or the end of its line whose strainer it hangs from or shuts against. */
  readonly near: Xy | 'start' | 'end';
  readonly gateway: Partial<Pick<Gateway, 'widthM' | 'leaves' | 'hungFrom' | 'opens' | 'vehicles' | 'note'>>;
  /** False: nothing is bridged, since the wires on either side are fed on their own (or are not live). */
  readonly crossing: boolean;
}

const stock = { widthM: 4.2 };
const wide = { widthM: 4.8, opens: 'right' } as const;
const machinery = { widthM: 7.2, leaves: 2, vehicles: true } as const;
const vehicle = { widthM: 4.8, vehicles: true } as const;

export function gatewaysOf(fences: Layout): PlacedGateway[] {
  const live = (fence: Fence, near: Xy, gateway: PlacedGateway['gateway'] = stock): PlacedGateway => {
    return { fence, near, gateway, crossing: true };
  };
  const corner = (fence: Fence, near: 'start' | 'end', gateway: PlacedGateway['gateway'] = stock): PlacedGateway => {
    const note = 'Corner gateway: the wires on both sides are fed on their own, so nothing crosses it.';
    return { fence, near, gateway: { ...gateway, note }, crossing: false };
  };
  const dead = (fence: Fence, near: Xy, gateway: PlacedGateway['gateway'] = stock): PlacedGateway => {
    return { fence, near, gateway, crossing: false };
  };
  return [
    live(fences.roadWest, between(fences.laneWest.start, fences.laneSouth.start, 0.5), {
      ...machinery,
      note: 'Main entrance from the public road.',
    }),
    // From the lane into the front paddocks.
    live(fences.laneWest, [-222, -830], vehicle),
    live(fences.laneWest, [-190, -735], stock),
    live(fences.laneWest, [-130, -560], wide),
    live(fences.laneWest, [-100, -290], stock),
    live(fences.laneWest, [-160, 60], machinery),
    live(fences.laneWest, [-100, 360], stock),
    live(fences.laneWest, [30, 715], wide),
    live(fences.laneSouth, [-170, -700], wide),
    live(fences.laneSouth, [-92, -400], stock),
    live(fences.laneSouth, [220, 20], machinery),
    live(fences.laneSouth, [590, -50], stock),
    live(fences.laneNorth, [60, 45], stock),
    live(fences.laneNorth, [20, 590], wide),
    live(fences.laneNorth, [280, 30], stock),
    live(fences.laneNorth, [700, -40], machinery),
    live(fences.laneTop, [38, 902], vehicle),
    live(fences.branchEnd, [990, 12], vehicle),
    // Between front and back paddocks.
    live(fences.wc0, [-790, -840], wide),
    corner(fences.wc1, 'end'),
    corner(fences.wc2, 'end'),
    corner(fences.wc3, 'start', wide),
    corner(fences.wc4, 'end'),
    live(fences.wc5, [-752, 820], stock),
    corner(fences.sc0, 'end'),
    corner(fences.sc1, 'end', wide),
    corner(fences.sc2, 'end'),
    live(fences.sc3, [1100, -545], stock),
    corner(fences.nc0, 'end'),
    corner(fences.nc1, 'end', wide),
    corner(fences.nc2, 'end'),
    live(fences.nc3, [1140, 555], stock),
    // Between bands.
    live(fences.w2, [-1180, -318], machinery),
    live(fences.w3, [-1230, 32], stock),
    live(fences.w4, [-330, 320], vehicle),
    live(fences.branchToEast, [1040, 28], stock),
    live(fences.n3, [1024, 440], wide),
    // Out to the road, and in the yard.
    live(fences.roadWest, [-1180, -1004], machinery),
    dead(fences.roadEast, [1200, -970], machinery),
    dead(fences.yard, [-380, -860], { widthM: 3.6 }),
    dead(fences.holding, [-346, -750], stock),
  ];
}

export interface PlacedSwitch {
  readonly at:
    | { readonly on: 'leadOut' }
    | { readonly on: 'lineEnd'; readonly fence: Fence; readonly end: LineEnd }
    | { readonly on: 'gateway'; readonly fence: Fence; readonly near: Xy; readonly post: LineEnd };
  readonly status: 'built' | 'planned';
  readonly note: string;
}

/** Some are there; the division plan asks for the others. */
export function switchesOf({ laneWest, laneSouth, w2, w4, s2, n1 }: Layout): PlacedSwitch[] {
  return [
    { at: { on: 'leadOut' }, status: 'built', note: 'Main switch, beside the shed.' },
    { at: { on: 'gateway', fence: laneWest, near: [-130, -560], post: 'start' }, status: 'built', note: '' },
    { at: { on: 'lineEnd', fence: w2, end: 'start' }, status: 'built', note: '' },
    { at: { on: 'lineEnd', fence: w4, end: 'start' }, status: 'built', note: '' },
    { at: { on: 'gateway', fence: laneSouth, near: [-170, -700], post: 'start' }, status: 'built', note: '' },
    { at: { on: 'lineEnd', fence: s2, end: 'start' }, status: 'built', note: '' },
    { at: { on: 'lineEnd', fence: n1, end: 'start' }, status: 'planned', note: '' },
  ];
}

export const energiser: Omit<Energiser, 'kind' | 'id' | 'name' | 'status'> & { readonly xy: Xy } = {
  xy: [-352, -908],
  at: [0, 0],
  openCircuitV: 9200,
  into500OhmV: 7400,
  storedJ: 24,
  outputJ: 16,
  note: 'On the shed wall. Figures invented for the example.',
};

/** From the shed, under the yard, to the west side of the lane. */
export const leadOutVia: readonly Xy[] = [
  [-330, -912],
  [-270, -905],
];

export const earthFieldXy: Xy = [-404, -884];

type PlacedService = Omit<Service, 'kind' | 'id' | 'path' | 'note'> & {
  readonly path: readonly Xy[];
  readonly note?: string;
};

export function servicesOf(
  { centreLines, roadWest, roadEast }: Layout,
  curve: (points: readonly Xy[]) => Xy[],
): PlacedService[] {
  const plain = { voltageV: null, buried: false, open: null };
  const beyondRoad = (fence: Fence) => fence.corners.map(([x, y]): Xy => [x, y - 14]);
  const alongRoad = [...beyondRoad(roadWest), ...beyondRoad(roadEast).slice(1)];
  return [
    {
      ...plain,
      name: 'Public road',
      what: 'road',
      open: 'public',
      path: [[-1700, -1012], ...alongRoad, [1700, -900]],
    },
    { ...plain, name: 'Farm track', what: 'road', open: 'private', path: centreLines.lane.slice(1) },
    {
      ...plain,
      name: 'Overhead line 11 kV',
      what: 'powerLine',
      voltageV: 11_000,
      path: [
        [1236, -1150],
        [1222, -520],
        [1208, 60],
        [1196, 560],
        [1186, 1180],
      ],
      note: 'Bare conductors on poles; height at the fences not measured yet.',
    },
    {
      ...plain,
      name: 'House supply 230 V',
      what: 'powerLine',
      voltageV: 230,
      buried: true,
      path: [
        [-420, -1016],
        [-414, -960],
        [-384, -930],
      ],
    },
    { ...plain, name: 'House earth electrode', what: 'earthElectrode', path: [[-376, -942]] },
    {
      ...plain,
      name: 'Water main to the troughs',
      what: 'waterPipe',
      buried: true,
      path: [[-372, -936], [-300, -880], ...centreLines.lane.slice(4, -2)],
    },
    {
      ...plain,
      name: 'Creek',
      what: 'creek',
      path: curve([
        [-1560, 600],
        [-1230, 470],
        [-1040, 540],
        [-860, 470],
        [-640, 500],
        [-420, 420],
        [-240, 470],
        [-50, 400],
        [150, 420],
        [330, 350],
        [520, 380],
        [760, 300],
        [960, 330],
        [1180, 250],
        [1530, 292],
      ]),
    },
  ];
}

export const strainersAt = (fences: Layout): Xy[] => [
  fences.roadWest.start,
  fences.laneWest.start,
  fences.laneSouth.start,
  fences.laneWest.end,
  fences.laneNorth.end,
  fences.laneSouth.end,
  fences.laneNorth.start,
  ...[fences.w1, fences.w2, fences.w3, fences.w4, fences.w5].flatMap(({ start, end }) => [start, end]),
  ...[fences.s1, fences.s2, fences.n1, fences.n2].map(({ start }) => start),
  fences.w1.corners[1]!,
  fences.w3.corners[1]!,
];

interface PlacedReading {
  readonly near: Xy;
  readonly date: string;
  readonly voltageV: number;
  readonly note: string;
}

export const readings: readonly PlacedReading[] = [
  { near: [-228, -904], date: '2025-03-04', voltageV: 8100, note: 'Where the lead-out joins.' },
  { near: [-792, -850], date: '2025-03-04', voltageV: 7600, note: 'Gateway between front and back.' },
  { near: [-985, -640], date: '2025-03-04', voltageV: 7400, note: '' },
  { near: [-1010, 8], date: '2025-03-04', voltageV: 6900, note: '' },
  { near: [38, 900], date: '2025-03-04', voltageV: 6700, note: 'Lane head.' },
  { near: [152, -300], date: '2025-03-05', voltageV: 7000, note: 'After rain.' },
];
