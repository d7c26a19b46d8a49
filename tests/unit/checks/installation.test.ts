import { describe, expect, it } from 'vitest';
import { signPlaces } from '../../../core/checks/installation/warningSigns.ts';
import { CheckContext } from '../../../core/checks/support/context.ts';
import { distanceM } from '../../../core/geometry/geodesic.ts';
import { newEarthField } from '../../../core/model/defaults.ts';
import { type Project, propertyOf, put } from '../../../core/model/project.ts';
import { newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import type { Crossing, Gateway, Service, Thing } from '../../../core/model/things.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import {
  at,
  bridgedGateway,
  drawing,
  energiser,
  gateSwitch,
  leadOut,
  line,
  lineSwitch,
} from '../../support/drawings.ts';
import { repaired, said } from './findings.ts';

/** Figures of IEC 60335-2-76, Annex BB, BB.1, as the project's table of facts paraphrases them. */
const standard = 'IEC 60335-2-76, Annex BB, BB.1 (paraphrased)';

const trunk = line('T', [
  [0, 0],
  [400, 0],
]);

const fed = (...things: readonly (Thing | readonly Thing[])[]): Project =>
  drawing(energiser('E', [0, 0]), trunk, ...things);

type Points = readonly (readonly [number, number])[];

function service(id: string, what: Service['what'], path: Points, changes: Partial<Service> = {}): Service {
  const plain = { name: id, voltageV: null, buried: false, open: null, note: '' };
  return { kind: 'service', id, what, path: path.map(at), ...plain, ...changes };
}

function gated(gateway: Partial<Gateway>, crossing: Partial<Crossing>): Project {
  const [made, under] = bridgedGateway('G', 'T', 200, gateway);
  return fed(made, { ...under, ...crossing });
}

describe('two energisers', () => {
  const second = energiser('E2', [400, 0]);

  it('on one fence is an error by the standard', () => {
    const [finding] = said(fed(second), 'twoEnergisers');
    expect(finding).toMatchObject({ severity: 'error', source: standard });
    expect(finding?.message).toContain('feed the same fence');
  });

  it('is an error too where only an open switch keeps them apart', () => {
    const parted = fed(second, lineSwitch('S', 'T', 200, { normally: 'open' }));
    expect(said(parted, 'twoEnergisers')[0]?.message).toContain('Only switches that are off');
  });

  it.each([
    [2.4, 1],
    [2.6, 0],
  ])('on fences %d m apart gives %d finding: 2.5 m is the least gap', (gapM, count) => {
    const other = line('U', [
      [100, gapM],
      [300, gapM],
    ]);
    const project = fed(other, energiser('E2', [300, gapM]));
    expect(said(project, 'fencesTooNear')).toHaveLength(count);
    expect(said(project, 'twoEnergisers')).toEqual([]);
  });
});

describe('earth electrodes', () => {
  const stakes = { ...newEarthField('F', 'E', at([0, -30])), rods: 3, spacingM: 3 };
  const electrode = (y: number) => service('M', 'earthElectrode', [[0, y]]);

  it.each([
    ['nothing drawn', fed(), 'notKnown'],
    ['no other electrode drawn', fed(stakes), 'notKnown'],
    ['9 m away', fed(stakes, electrode(-39)), 'error'],
    ['11 m away, where the row of stakes could reach nearer than 10 m', fed(stakes, electrode(-41)), 'notKnown'],
  ])('%s', (_, project, severity) => {
    expect(said(project, 'earthElectrodeDistance').map((finding) => finding.severity)).toEqual([severity]);
  });

  it('14 m away says nothing', () => {
    expect(said(fed(stakes, electrode(-44)), 'earthElectrodeDistance')).toEqual([]);
  });
});

describe('barbed wire', () => {
  const barbed = { ...drawing().fenceType.get('ft-2')!, id: 'barbed', barbedWires: 1 };

  it('in a live fence is told once for the type', () => {
    const lines = ['A', 'B'].map((id, i) =>
      line(
        id,
        [
          [0, 0],
          [10 * i, 90],
        ],
        { typeId: 'barbed' },
      ),
    );
    const [finding, ...more] = said(fed(barbed, ...lines), 'barbedWire');
    expect(more).toEqual([]);
    expect(finding?.message).toContain('A and B');
    const dead = lines.map((one) => ({ ...one, live: false }));
    expect(said(fed(barbed, ...dead), 'barbedWire')).toEqual([]);
  });
});

describe('power lines', () => {
  const square = (voltageV: number | null) =>
    service(
      'W',
      'powerLine',
      [
        [200, -300],
        [200, 300],
      ],
      { voltageV },
    );

  it('of unknown voltage are not known, and say what to enter', () => {
    const [finding] = said(fed(square(null)), 'powerLineVoltage');
    expect(finding).toMatchObject({ severity: 'notKnown', source: standard });
    expect(finding?.remedy).toContain('Enter its voltage');
    expect(said(fed(square(null)), 'powerLineHeights')).toEqual([]);
    expect(said(fed(square(230)), 'powerLineVoltage')).toEqual([]);
  });

  it.each([
    [230, '3.00 m clear', 4],
    [1000, '3.00 m clear', 4],
    [1001, '4.00 m clear', 30],
    [33_000, '4.00 m clear', 30],
    [33_001, '8.00 m clear', 30],
  ])('of %d V ask for %s, and low wires for some %d m beneath', (voltageV, clearance, zoneM) => {
    const [finding] = said(fed(square(voltageV)), 'powerLineHeights');
    expect(finding?.severity).toBe('notKnown');
    expect(finding?.message).toContain(clearance);
    const saidM = Number(/runs for ([\d.]+) m/.exec(finding!.message)![1]);
    expect(Math.abs(saidM - zoneM)).toBeLessThan(4.1);
  });

  it('crossed at a slant are told, square ones and buried cables are not', () => {
    const slant = service(
      'W',
      'powerLine',
      [
        [100, -100],
        [300, 100],
      ],
      { voltageV: 11_000 },
    );
    expect(said(fed(slant), 'powerLineAngle')[0]?.message).toContain('45°');
    expect(said(fed(square(11_000)), 'powerLineAngle')).toEqual([]);
    expect(said(fed({ ...slant, buried: true }), 'powerLineAngle')).toEqual([]);
  });

  it('are told of lead-outs above ground too', () => {
    const lead = leadOut(
      'L',
      'E',
      [
        [0, 0],
        [0, -200],
        [300, -200],
        [300, 0],
      ],
      { buried: false },
    );
    const project = fed(lead, square(11_000));
    expect(said(project, 'powerLineHeights').flatMap(({ thingIds }) => thingIds)).toContain('L');
  });
});

describe('overhead crossings', () => {
  it('hang high enough for what passes below', () => {
    const over = { method: 'overhead', riserHeightM: 3 } as const;
    expect(said(gated({ vehicles: true }, over), 'overheadCrossing')).toHaveLength(1);
    expect(said(gated({ vehicles: false }, over), 'overheadCrossing')).toEqual([]);
  });

  it('keep away from power lines', () => {
    const project = gated({}, { method: 'overhead', riserHeightM: 3 });
    const near = service(
      'W',
      'powerLine',
      [
        [210, -90],
        [210, 90],
      ],
      { voltageV: 11_000 },
    );
    expect(said(put(project, near), 'overheadCrossing')).toHaveLength(1);
    expect(said(put(project, { ...near, voltageV: 400 }), 'overheadCrossing')).toEqual([]);
  });
});

describe('assumed figures are said to be assumed', () => {
  it('heights of overhead wires', () => {
    const [finding] = said(gated({ vehicles: true }, { method: 'overhead', riserHeightM: 3 }), 'overheadCrossing');
    expect(finding?.message).toContain('4.50 m is assumed by this program to be the least: check local rules');
    expect(finding?.source).toBe('an assumption of this project');
  });
});

describe('live cable that is a size of building wire', () => {
  it('in a file of an older version is told, and changed only by the fix', () => {
    const project = gated({}, { cableId: 'cable-copper-2.5mm2' });
    const [finding] = said(project, 'buildingWire');
    expect(finding).toMatchObject({ severity: 'warning', thingIds: ['X-G', 'G'] });
    expect(finding?.message).toContain('insulation is not made for the voltage of a fence');
    expect(finding?.remedy).toContain('rated 10 kV or more');
    expect([...repaired(project, 'buildingWire').crossing.values()][0]!.cableId).toBe('cable-steel-2.5');
  });

  it('of a lead-out too; where it is built, nothing is offered that would only change the entry', () => {
    const lead = leadOut(
      'L',
      'E',
      [
        [0, 0],
        [0, -50],
      ],
      { cableId: 'cable-copper-6mm2', status: 'built' },
    );
    const [finding] = said(fed(lead), 'buildingWire');
    expect(finding?.thingIds).toEqual(['L']);
    expect(finding?.fixes).toEqual([]);
    expect(finding?.remedy).toContain('replace it');
  });

  it('fence lead-out cable, and a conductor of the user’s own, say nothing', () => {
    expect(said(gated({}, { cableId: 'cable-copper-2.5' }), 'buildingWire')).toEqual([]);
    const own = { kind: 'conductor', id: 'own', name: 'Own', ohmPerKm: 7, note: '' } as const;
    expect(said(put(gated({}, { cableId: 'own' }), own), 'buildingWire')).toEqual([]);
  });
});

describe('another cable where the live cable lies', () => {
  const noted = (alsoInTrench: string): Project => put(gated({}, {}), { ...newCrossingRecord('X-G'), alsoInTrench });

  it.each([
    ['mains cable to the pump', 'warning'],
    ['phone, in the same pipe', 'error'],
    ['data cable in its own conduit', 'hint'],
  ])('by the record "%s" is a finding of weight %s', (note, severity) => {
    const [finding, ...more] = said(noted(note), 'cableInTrench');
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ severity, thingIds: ['X-G', 'G'] });
    expect(finding?.message).toContain(`"${note}"`);
    expect(finding?.source).toContain(standard);
  });

  it.each(['', 'no mains', 'water pipe'])('"%s" says nothing', (note) => {
    expect(said(noted(note), 'cableInTrench')).toEqual([]);
  });

  /** The trench runs from (198, 0) to (202, 0) and bows 1 m to the north. */
  const cable = (path: Points, what: Service['what'] = 'powerLine', buried = true) =>
    put(gated({}, { bowM: 0 }), service('W', what, path, { buried }));
  const along: Points = [
    [150, 0.2],
    [250, 0.2],
  ];

  it('drawn along the trench is told, with how far; one that only crosses it is not', () => {
    const [finding] = said(cable(along), 'cableInTrench');
    expect(finding).toMatchObject({ severity: 'warning', thingIds: ['X-G', 'W'] });
    expect(finding?.message).toContain('for 4.00 m within 0.30 m of it');
    expect(finding?.message).toContain('One conduit with the live cable is forbidden');
    expect(said(cable(along, 'dataCable'), 'cableInTrench')).toHaveLength(1);
    const across: Points = [
      [200, -50],
      [200.5, 50],
    ];
    expect(said(cable(across), 'cableInTrench')).toEqual([]);
    expect(said(cable(across), 'trenchNearService')[0]?.remedy).toContain('Never lay the live cable in one conduit');
  });

  it('overhead, of water, or a metre beside is no cable in the trench', () => {
    expect(said(cable(along, 'powerLine', false), 'cableInTrench')).toEqual([]);
    expect(said(cable(along, 'waterPipe'), 'cableInTrench')).toEqual([]);
    expect(said(cable(along.map(([x, y]) => [x, y + 1] as const)), 'cableInTrench')).toEqual([]);
  });

  it('along a buried lead-out is told too', () => {
    const lead = leadOut('L', 'E', [
      [0, 0],
      [0, -80],
    ]);
    const beside = service(
      'W',
      'dataCable',
      [
        [0.1, -20],
        [0.1, -60],
      ],
      { buried: true },
    );
    const [finding] = said(fed(lead, beside), 'cableInTrench');
    expect(finding?.thingIds).toEqual(['L', 'W']);
    expect(finding?.message).toMatch(/along the trench of lead-out L, for 40\.\d m/);
    expect(said(fed({ ...lead, buried: false }, beside), 'cableInTrench')).toEqual([]);
  });
});

describe('public roads and paths', () => {
  const road = (y: number, open: Service['open']) =>
    service(
      'R',
      'road',
      [
        [-100, y],
        [500, y],
      ],
      { open },
    );

  it('along live fence need signs, counted at an interval that is told', () => {
    const project = fed(road(-10, 'public'));
    const [finding] = said(project, 'warningSigns');
    expect(finding?.severity).toBe('notKnown');
    expect(finding?.message).toContain('9 at one every 50.0 m');
    expect(said(fed(road(-16, 'public')), 'warningSigns')).toEqual([]);
    expect(said(fed(road(-10, 'private')), 'warningSigns')).toEqual([]);
    const places = signPlaces(new CheckContext(project, surveyOf(project)), 100);
    expect(places.map(({ atM }) => Math.round(atM))).toEqual([0, 100, 200, 300, 400]);
    expect(distanceM(places[2]!.at, at([200, 0]))).toBeLessThan(0.01);
  });

  it('of unknown use are not known', () => {
    expect(said(fed(road(-10, null)), 'publicUse')[0]?.severity).toBe('notKnown');
    expect(said(fed(road(-99, null)), 'publicUse')).toEqual([]);
  });

  it('cross live fence only at a gateway', () => {
    const path = service(
      'P',
      'path',
      [
        [200, -50],
        [200, 50],
      ],
      { open: 'public' },
    );
    expect(said(fed(path), 'publicWayCrossesFence')).toHaveLength(1);
    expect(said(put(gated({}, {}), path), 'publicWayCrossesFence')).toEqual([]);
    expect(said(fed({ ...path, open: 'private' }), 'publicWayCrossesFence')).toEqual([]);
  });
});

describe('crossings', () => {
  it('carry the earth where the fence has an earth wire, or the soil is poor; else it is not known', () => {
    const bare = gated({}, { earth: false });
    expect(said(bare, 'earthAcrossGateway')[0]?.severity).toBe('notKnown');
    const poor = { ...propertyOf(bare), power: { ...propertyOf(bare).power, soilOhmM: 1000 } };
    expect(said(put(bare, poor), 'earthAcrossGateway')[0]?.severity).toBe('warning');
    const withEarthWire = put(bare, { ...trunk, typeId: 'ft-4' });
    expect(said(withEarthWire, 'earthAcrossGateway')[0]?.message).toContain('earth-return wire');
    expect(said(withEarthWire, 'earthAcrossGateway')[0]?.message).toContain('cut at this gateway');
    expect(said(gated({}, {}), 'earthAcrossGateway')).toEqual([]);
  });

  it('carry the earth overhead as well, or say that it is cut', () => {
    const over = put(gated({}, { method: 'overhead', riserHeightM: 3 }), { ...trunk, typeId: 'ft-4' });
    expect(said(over, 'earthAcrossGateway')).toEqual([]);
    expect(surveyOf(over).crossings.get('G')!.earthCableM).toBeGreaterThan(4);
    const without = put(gated({}, { method: 'overhead', riserHeightM: 3, earth: false }), {
      ...trunk,
      typeId: 'ft-4',
    });
    const [finding] = said(without, 'earthAcrossGateway');
    expect(finding).toMatchObject({ severity: 'warning' });
    expect(finding?.message).toContain('cut at this gateway');
    expect(finding?.remedy).toContain('overhead');
  });

  it.each([
    [false, 0.3, 0],
    [false, 0.29, 1],
    [true, 0.44, 1],
    [true, 0.45, 0],
  ])('vehicles %s, %d m deep: %d finding', (vehicles, depthM, count) => {
    expect(said(gated({ vehicles }, { depthM }), 'trenchDepth')).toHaveLength(count);
  });

  it('are planned deeper by the fix, which is offered only while they are planned', () => {
    const project = gated({ vehicles: true }, { depthM: 0.3 });
    expect([...repaired(project, 'trenchDepth').crossing.values()][0]!.depthM).toBe(0.45);
    expect(said(gated({ vehicles: true }, { depthM: 0.3, status: 'built' }), 'trenchDepth')[0]!.fixes).toEqual([]);
  });

  it.each([
    [true, 0.1, 1],
    // To the top of a pipe of 19 mm bore that lies on the bottom of a trench of 0.45 m.
    [true, 0.425, 0],
    [true, 0.42, 1],
    [false, 0.28, 0],
    [false, 0.1, 1],
  ])('vehicles %s, planned deep enough, measured %d m to the pipe: %d finding', (vehicles, depthM, count) => {
    const planned = gated({ vehicles }, { depthM: 0.6, status: 'built', pipeBoreMm: 19 });
    const [crossing] = planned.crossing.values();
    const depths = [
      { alongM: 0, depthM: 0.6 },
      { alongM: 2, depthM },
    ];
    const measured = put(planned, { ...newCrossingRecord(crossing!.id), depths });
    expect(said(planned, 'trenchDepth')).toEqual([]);
    const findings = said(measured, 'trenchDepth');
    expect(findings).toHaveLength(count);
    for (const { message, fixes } of findings) {
      expect(message).toContain(`was measured ${depthM.toFixed(2)} m deep, to its top, 2.00 m along the trench`);
      expect(fixes).toEqual([]);
    }
  });

  it('go by what was measured where the plan was too shallow', () => {
    const planned = gated({ vehicles: true }, { depthM: 0.3, status: 'built' });
    const [crossing] = planned.crossing.values();
    expect(said(planned, 'trenchDepth')[0]!.message).toContain('was planned 0.30 m deep and not measured');
    const record = { ...newCrossingRecord(crossing!.id), depths: [{ alongM: 1, depthM: 0.5 }] };
    expect(said(put(planned, record), 'trenchDepth')).toEqual([]);
  });

  it('have sealed risers once they are built', () => {
    const severity = (crossing: Partial<Crossing>) => said(gated({}, crossing), 'risersSealed')[0]?.severity;
    expect(severity({ status: 'built', sealed: null })).toBe('notKnown');
    expect(severity({ status: 'built', sealed: false })).toBe('warning');
    expect(severity({ status: 'built', sealed: true })).toBeUndefined();
    expect(severity({ status: 'planned', sealed: null })).toBeUndefined();
  });

  it('have their switch on the supply side, and it is moved there by the fix', () => {
    const wrong = put(gated({}, {}), gateSwitch('S', 'G', 'end'));
    expect(said(wrong, 'switchWrongSide')).toHaveLength(1);
    expect(repaired(wrong, 'switchWrongSide').switch.get('S')!.place).toMatchObject({ post: 'start' });
    expect(said(put(gated({}, {}), gateSwitch('S', 'G', 'start')), 'switchWrongSide')).toEqual([]);
  });
});
