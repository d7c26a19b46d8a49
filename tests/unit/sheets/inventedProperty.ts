import type { SheetOptions } from '../../../core/api/sheetOptions.ts';
import { createLocalPlane } from '../../../core/geometry/localPlane.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import {
  crossingDefaults,
  newCrossing,
  newFenceLine,
  newGateway,
  newProperty,
  startingFenceTypes,
} from '../../../core/model/defaults.ts';
import type { LonLat, Service, SwitchPlace, Thing } from '../../../core/model/things.ts';

/** Middle of nowhere in the southern Pacific: no property of anybody's. */
export const origin: LonLat = [-120.25, -45.5];
const plane = createLocalPlane(origin);
export const at = (x: number, y: number): LonLat => plane.toLonLat([x, y]);
const path = (...points: readonly Xy[]): LonLat[] => points.map(([x, y]) => at(x, y));

export const baseOptions: SheetOptions = {
  paper: 'A4',
  orientation: 'landscape',
  scaleDenominator: 10_000,
  centre: null,
  gridM: null,
  withSwitchRegister: true,
  withCrossingSchedule: true,
  withTestSheets: true,
  date: '2026-05-12',
};

/**
 * An invented property, made by rule: a lane up the middle, `rows` paddocks on each side of it, a gateway with its
 * crossing into each, and a cut-out switch at every third gateway and every fourth take-off.
 */
export function inventedThings(rows = 6, name = 'Kōwhai Flat (invented)'): Thing[] {
  const [width, height, lane] = [700, 250, 12];
  const north = rows * height;
  const east = width + lane / 2;
  const things: Thing[] = [
    { ...newProperty(name, origin), invented: true },
    ...startingFenceTypes(),
    newFenceLine({
      id: 'boundary',
      name: 'Boundary',
      typeId: 'ft-boundary',
      live: false,
      status: 'built',
      path: path([-east, 0], [-east, north], [east, north], [east, 0], [-east, 0]),
    }),
    fence(
      'yard',
      'Yard',
      [
        [-lane / 2, 0],
        [lane / 2, 0],
      ],
      'built',
    ),
    fence(
      'lane-west',
      'Lane west',
      [
        [-lane / 2, 0],
        [-lane / 2, north],
      ],
      'built',
    ),
    fence(
      'lane-east',
      'Lane east',
      [
        [lane / 2, 0],
        [lane / 2, north],
      ],
      'built',
    ),
    newFenceLine({
      id: 'garden',
      name: 'Garden fence',
      typeId: 'ft-1',
      live: false,
      path: path([100, -60], [220, -60], [220, -20]),
    }),
  ];
  for (let row = 0; row < rows; row++) {
    for (const side of ['west', 'east'] as const) {
      const sign = side === 'west' ? -1 : 1;
      const number = row * 2 + (side === 'west' ? 1 : 2);
      const status = row < rows / 2 ? 'built' : 'planned';
      if (row > 0) {
        things.push(
          fence(
            `cross-${number}`,
            `Cross ${number}`,
            [
              [(sign * lane) / 2, row * height],
              [sign * (width + lane / 2), row * height],
            ],
            status,
          ),
        );
      }
      const gateway = newGateway({
        id: `g${number}`,
        name: `G${number}`,
        lineId: `lane-${side}`,
        atM: row * height + 30,
        opens: side === 'west' ? 'left' : 'right',
        leaves: row % 4 === 3 ? 2 : 1,
        widthM: row % 4 === 3 ? 8.4 : 4.2,
        vehicles: row % 2 === 0,
        status,
      });
      things.push(gateway, newCrossing(`c${number}`, gateway, crossingDefaults));
      if (row > 0 && number % 4 === 3) {
        things.push(
          cutOut(`t${number}`, `T${number}`, { on: 'lineEnd', lineId: `cross-${number}`, end: 'start' }, status),
        );
      }
      if (number % 3 === 1) {
        const place: SwitchPlace = { on: 'gateway', gatewayId: `g${number}`, post: 'start' };
        things.push({
          ...cutOut(`s${number}`, `S${number}`, place, status),
          normally: number === 7 ? 'open' : 'closed',
        } as Thing);
      }
      things.push({
        kind: 'paddock',
        id: `p${number}`,
        name: `Paddock ${number}`,
        at: at(sign * 300, row * height + 125),
        note: '',
      });
    }
  }
  things.push(
    {
      kind: 'energiser',
      id: 'e1',
      name: 'Woolshed',
      at: at(30, -20),
      openCircuitV: 9000,
      into500OhmV: 6000,
      storedJ: 10,
      outputJ: 7,
      status: 'built',
      note: '',
    },
    {
      kind: 'leadOut',
      id: 'l1',
      name: 'L1',
      energiserId: 'e1',
      path: path([30, -20], [6, 0]),
      cableId: 'cable-steel-2.5',
      buried: true,
      status: 'built',
      note: '',
    },
    {
      kind: 'earthField',
      id: 'ef1',
      energiserId: 'e1',
      at: at(38, -30),
      rods: 3,
      rodLengthM: 1.8,
      rodDiameterMm: 16,
      spacingM: 3,
      status: 'built',
      note: '',
    },
    { kind: 'post', id: 'po1', name: 'NW strainer', at: at(-706, north), role: 'strainer', note: '' },
    { kind: 'post', id: 'po2', name: 'NE strainer', at: at(706, north), role: 'strainer', note: '' },
    service('road', 'Creek Road', 'road', [
      [-900, -35],
      [900, -35],
    ]),
    service('creek', 'Alder Creek', 'creek', [
      [-650, -50],
      [-500, 300],
      [-300, 520],
      [-350, 900],
      [-200, north + 60],
    ]),
    service(
      'power',
      'Valley line',
      'powerLine',
      [
        [-800, 620],
        [0, 480],
        [820, 380],
      ],
      { voltageV: 11_000 },
    ),
    service(
      'water',
      'Trough main',
      'waterPipe',
      [
        [60, -20],
        [60, north - 80],
        [500, north - 80],
      ],
      { buried: true },
    ),
    service('flood', 'Flats', 'floodZone', [
      [-640, 60],
      [-300, 40],
      [-280, 330],
      [-600, 350],
      [-640, 60],
    ]),
  );
  return things;
}

function fence(id: string, name: string, points: readonly Xy[], status: 'planned' | 'built'): Thing {
  return newFenceLine({ id, name, typeId: 'ft-2', path: path(...points), status });
}

function service(
  id: string,
  name: string,
  what: Service['what'],
  points: readonly Xy[],
  more: Partial<Service> = {},
): Service {
  return {
    kind: 'service',
    id,
    name,
    what,
    path: path(...points),
    voltageV: null,
    buried: false,
    open: null,
    note: '',
    ...more,
  };
}

function cutOut(id: string, name: string, place: SwitchPlace, status: 'planned' | 'built'): Thing {
  return { kind: 'switch', id, name, place, normally: 'closed', pinned: false, status, note: '' };
}
