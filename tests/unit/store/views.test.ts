import { join } from 'node:path';
import { expect, test } from 'vitest';
import { crossingDefaults, newCrossing, newFenceLine, newGateway } from '../../../core/model/defaults.ts';
import type { CutOutSwitch, Reading } from '../../../core/model/things.ts';
import { makeFile, startingThings, withSqlite } from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

test('plain SQLite reads gateways, crossings, switches and readings by name', () => {
  const line = newFenceLine({
    id: 'f1',
    name: 'Lane north',
    typeId: 'ft-2',
    path: [
      [175, -38],
      [175.01, -38],
    ],
  });
  const gateway = newGateway({ id: 'g1', name: 'G1', lineId: 'f1', atM: 120.5, vehicles: true });
  const cutOut: CutOutSwitch = {
    kind: 'switch',
    id: 's1',
    name: 'S1',
    place: { on: 'gateway', gatewayId: 'g1', post: 'start' },
    normally: 'closed',
    pinned: false,
    status: 'built',
    note: '',
  };
  const reading: Reading = {
    kind: 'reading',
    id: 'r1',
    at: [175.002, -38],
    date: '2031-05-02',
    voltageV: 6200,
    currentA: null,
    openSwitchIds: ['s1', 's-gone'],
    note: 'after rain',
  };
  const crossing = newCrossing('c1', gateway, crossingDefaults);
  const path = makeFile(join(temporaryFolder(), 'Farm.undergate'), [
    ...startingThings,
    line,
    gateway,
    crossing,
    cutOut,
    reading,
  ]);
  const rows = (view: string) => withSqlite(path, (database) => database.prepare(`SELECT * FROM ${view}`).all());

  expect(rows('v_gateways')).toMatchObject([
    { gateway: 'G1', fence_line: 'Lane north', along_line_m: 120.5, width_m: 4.2, vehicles_pass: 1, status: 'planned' },
  ]);
  expect(rows('v_crossings')).toMatchObject([{ gateway: 'G1', method: 'buried', bow_m: null, planned_depth_m: 0.45 }]);
  expect(rows('v_switches')).toMatchObject([
    { switch: 'S1', stands_at: 'gateway', gateway: 'G1', gateway_post: 'start', fence_line: 'Lane north' },
  ]);
  expect(rows('v_readings')).toMatchObject([
    { date: '2031-05-02', longitude_deg: 175.002, latitude_deg: -38, voltage_v: 6200, open_switches: 'S1' },
  ]);
  expect(rows('v_sections')).toEqual([]);
});
