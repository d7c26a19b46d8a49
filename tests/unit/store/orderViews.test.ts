import { join } from 'node:path';
import { expect, test } from 'vitest';
import { orderDefaults } from '../../../core/model/orderDefaults.ts';
import type { Thing } from '../../../core/model/things.ts';
import { startingPrices } from '../../../core/quantities/order/startingPrices.ts';
import { line } from '../../support/drawings.ts';
import { made, makeStore, openStore, withSqlite } from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const things: readonly Thing[] = [
  { ...orderDefaults, currency: 'NZD', taxPercent: 15 },
  startingPrices().items[0]!,
  startingPrices().kits[0]!,
  startingPrices().labour[0]!,
  { kind: 'fenceMake', id: 'make:ft-2', typeId: 'ft-2', droppersPerBay: 2 },
  { kind: 'rollOnHand', id: 'r', measure: 'pipe:19', lengthM: 38.5, count: 2, note: 'in the shed' },
  { kind: 'stage', id: 's', name: 'This spring', rank: 0, note: '' },
  line('F1', [
    [0, 0],
    [10, 0],
  ]),
  { kind: 'stageMark', id: 'in:F1', thingId: 'F1', stageId: 's' },
  {
    kind: 'keptPlan',
    id: 'k',
    name: 'Plan A',
    date: '2026-05-12',
    note: '',
    things: [
      line('F1', [
        [0, 0],
        [10, 0],
      ]),
    ],
  },
];

test('the things of an order are kept, and plain SQLite reads them', () => {
  const path = join(temporaryFolder(), 'Farm.undergate');
  const store = makeStore(path);
  store.apply({ baseRevision: 0, label: 'Order', changes: things.map((thing) => made(thing)) });
  store.close();
  const again = openStore(path);
  for (const thing of things) expect(again.things()).toContainEqual(thing);
  again.close();

  const rows = (view: string) => withSqlite(path, (database) => database.prepare(`SELECT * FROM ${view}`).all());
  expect(rows('v_order_settings')).toEqual([{ currency: 'NZD', tax_percent: 15, counts: 'planned' }]);
  expect(rows('v_price_list')).toMatchObject([{ item: startingPrices().items[0]!.name, invented_price: 1 }]);
  expect(rows('v_rolls_on_hand')).toEqual([{ serves: 'pipe:19', length_m: 38.5, rolls: 2, note: 'in the shed' }]);
  expect(rows('v_stages')).toEqual([{ stage: 'This spring', what: 'fenceLine', thing: 'F1' }]);
});
