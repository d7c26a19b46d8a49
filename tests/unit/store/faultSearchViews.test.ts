import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { FaultSearch, FaultSearchReading } from '../../../core/model/faultSearchThings.ts';
import { makeFile, startingThings, withSqlite } from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

test('plain SQLite reads searches for faults and each of their readings', () => {
  const reading = (more: Partial<FaultSearchReading>): FaultSearchReading => ({
    check: 'test',
    switchId: 's1',
    switchName: 'S1',
    openIds: ['s1'],
    voltageV: 2100,
    result: 'low',
    doubtful: false,
    at: '2031-05-02T09:10',
    setAside: false,
    ...more,
  });
  const search: FaultSearch = {
    kind: 'faultHunt',
    id: 'h1',
    name: 'Search of 2 May 2031',
    startedAt: '2031-05-02T09:00',
    by: 'the stockman',
    energiserId: 'e-gone',
    saves: 'tests',
    lowBelowV: 3000,
    goodFromV: 4000,
    openedFirst: [],
    readings: [reading({ check: 'start', switchId: null, switchName: '' }), reading({ doubtful: true })],
    end: {
      at: '2031-05-02T10:00',
      outcome: 'found',
      section: 'B',
      place: 'F1 with G2',
      confirmed: true,
      cause: 'branch',
    },
    note: '',
  };
  const path = makeFile(join(temporaryFolder(), 'Farm.undergate'), [...startingThings, search]);
  const rows = (view: string) => withSqlite(path, (database) => database.prepare(`SELECT * FROM ${view}`).all());
  expect(rows('v_fault_hunts')).toMatchObject([
    {
      name: 'Search of 2 May 2031',
      searched_by: 'the stockman',
      outcome: 'found',
      section: 'B',
      confirmed: 1,
      cause: 'branch',
    },
  ]);
  expect(rows('v_hunt_readings')).toMatchObject([
    { number: 1, read_for: 'start', at_switch: '', voltage_v: 2100, result: 'low' },
    { number: 2, read_for: 'test', at_switch: 'S1', doubtful: 1, set_aside: 0 },
  ]);
});
