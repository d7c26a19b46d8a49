import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../core/checks/finding.ts';
import { newFenceType, startingFenceTypes } from '../../../core/model/defaults.ts';
import { addFenceLine } from '../../../core/model/edits/addFenceLine.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { EditRefused } from '../../../core/model/edits/support/edit.ts';
import { orderDefaults } from '../../../core/model/orderDefaults.ts';
import { allThings, type Project, put } from '../../../core/model/project.ts';
import type { CatalogueItem, FenceType, OrderSettings, RollOnHand, Stage } from '../../../core/model/things.ts';
import { planFigures } from '../../../core/quantities/comparePlans.ts';
import {
  addItemFor,
  addKit,
  changeItem,
  changeKit,
  deleteItem,
  deleteKit,
  setLabourRate,
} from '../../../core/quantities/edits/changePrices.ts';
import { addStage, deleteStage, moveStage, putInStage } from '../../../core/quantities/edits/changeStages.ts';
import { changeTerms, setDroppers } from '../../../core/quantities/edits/changeTerms.ts';
import { deleteKeptPlan, goBackTo, keepPlan } from '../../../core/quantities/edits/keepPlan.ts';
import { coilNote, lineCaution } from '../../../core/quantities/formatOrder.ts';
import { type OrderPart, orderOf } from '../../../core/quantities/order/order.ts';
import { cheapestFor, packsFor } from '../../../core/quantities/order/packs.ts';
import { priceListOf } from '../../../core/quantities/order/priceList.ts';
import { stageOfThing, stagesOf } from '../../../core/quantities/order/stages.ts';
import { startingPrices } from '../../../core/quantities/order/startingPrices.ts';
import { orderFindings } from '../../../core/quantities/orderFindings.ts';
import { orderSettingsOf, takeOff } from '../../../core/quantities/takeOff.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { message } from '../../../core/words/message.ts';
import { bridgedGateway, cutOut, drawing, line, ring } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';

function worked(project: Project) {
  const settings = orderSettingsOf(project);
  const input = {
    project,
    takeOff: takeOff({ project, survey: surveyOf(project) }),
    prices: priceListOf(project),
    settings,
  };
  const order = orderOf(input);
  return { order, findings: orderFindings(input, order).map(inWords) };
}

/** A finding as it is read in English. */
const inWords = ({ message, remedy, fixes, ...rest }: Finding) => ({
  ...rest,
  message: inEnglish(message),
  remedy: inEnglish(remedy),
  fixes: fixes.map((fix) => ({ ...fix, label: inEnglish(fix.label) })),
});

const orderLine = ({ lines }: OrderPart, id: string) => lines.find(({ item }) => item.id === id);

const item = (figures: Partial<CatalogueItem>): CatalogueItem => ({
  kind: 'catalogueItem',
  id: 'i',
  name: 'i',
  measure: null,
  unit: 'each',
  packSize: 1,
  price: 1,
  taxPercent: null,
  wastePercent: 0,
  invented: false,
  note: '',
  ...figures,
});

const roll = (id: string, measure: string, lengthM: number, count = 1): RollOnHand => ({
  kind: 'rollOnHand',
  id,
  measure,
  lengthM,
  count,
  note: '',
});

const square = drawing(
  ring('F1', [
    [0, 0],
    [100, 0],
    [100, 100],
    [0, 100],
  ]),
  ...bridgedGateway('G1', 'F1', 50),
);

describe('packs', () => {
  it('are whole, and no more than needed', () => {
    expect(packsFor(item({ packSize: 100 }), 300)).toBe(3);
    expect(packsFor(item({ packSize: 100 }), 300.01)).toBe(4);
    expect(packsFor(item({ packSize: 25, wastePercent: 10 }), 25)).toBe(2);
    expect(packsFor(item({ packSize: 25 }), 0)).toBe(0);
  });

  it('are of the item that comes cheapest for the amount', () => {
    const bag = item({ id: 'bag', packSize: 100, price: 30 });
    const box = item({ id: 'box', packSize: 1000, price: 200 });
    const unknown = item({ id: 'unknown', packSize: 1000, price: null });
    expect(cheapestFor([bag, box, unknown], 150)?.id).toBe('bag');
    expect(cheapestFor([bag, box, unknown], 900)?.id).toBe('box');
    expect(cheapestFor([unknown], 10)?.id).toBe('unknown');
  });
});

describe('the order of a square paddock of 100 m sides with one gateway of 4 m (worked by hand)', () => {
  const { order, findings } = worked(square);
  const [part] = order.parts as [OrderPart];

  it('is one part without stages', () => {
    expect(order.parts).toHaveLength(1);
    expect(part.stage).toBeNull();
  });

  it('has 2 x 396 m of wire, 10 m of tie-offs and 3 % of waste in two coils of 649 m at 150', () => {
    expect(orderLine(part, 'item-wire-steel-2.5')).toMatchObject({ packs: 2, cost: { net: 300 } });
  });

  it('has 35 posts and 2 % of waste: 36 at 9.50', () => {
    expect(orderLine(part, 'item-post')).toMatchObject({ packs: 36, cost: { net: 342 } });
  });

  it('has the parts of the gateway kit', () => {
    expect(orderLine(part, 'item-hinge-set')).toMatchObject({ needed: 1, packs: 1, cost: { net: 24 } });
    expect(orderLine(part, 'item-latch')).toMatchObject({ needed: 1, packs: 1, cost: { net: 18 } });
    expect(orderLine(part, 'item-drop-bolt')).toBeUndefined();
  });

  it('has one roll each of pipe and cables, by the cut lists', () => {
    expect(orderLine(part, 'item-pipe-19-50')).toMatchObject({ packs: 1 });
    expect(orderLine(part, 'item-cable-steel-2.5-50')).toMatchObject({ packs: 1 });
    expect(part.cutLists.map(({ key, rolls }) => [key, rolls.length])).toEqual([
      ['pipe:19', 1],
      ['cable:cable-steel-2.5', 1],
      ['earthCable', 1],
    ]);
  });

  it('pays 0.396 km of fence, six strainers and gate posts, a gateway, a crossing and its trench', () => {
    const pay = Object.fromEntries(part.labour.map(({ rate, cost }) => [rate.per, cost.net]));
    expect(pay.fenceKm).toBeCloseTo(0.396 * 4200, 0);
    expect(pay).toMatchObject({ strainer: 6 * 65, gateway: 110, crossing: 140 });
  });

  it('adds up', () => {
    const net = [...part.lines, ...part.labour].reduce((sum, { cost }) => sum + cost.net!, 0);
    expect(order.total.net).toBeCloseTo(net, 2);
    expect(order.total).toMatchObject({ tax: 0, unpriced: 0, gross: order.total.net });
  });

  it('misses a gate of 4.0 m in the list, and says that prices are invented and in no currency', () => {
    expect(findings.map(({ rule }) => rule)).toEqual(['noItem', 'inventedPrices', 'noCurrency']);
    const [missing] = findings;
    const repaired = missing!.fixes[0]!.edit(square, countingIds());
    expect(worked(repaired).findings.map(({ rule }) => rule)).toEqual(['noPrice', 'inventedPrices', 'noCurrency']);
  });
});

describe('tax', () => {
  const taxed = (settings: Partial<OrderSettings>) => put(square, { ...orderDefaults, ...settings });

  it('is on everything, to the hundredth of each line', () => {
    const { order } = worked(taxed({ taxPercent: 15 }));
    const [part] = order.parts as [OrderPart];
    for (const { cost } of [...part.lines, ...part.labour]) expect(cost.tax).toBeCloseTo(cost.net! * 0.15, 2);
    expect(order.total.gross).toBeCloseTo(order.total.net + order.total.tax, 2);
  });

  it('is an own one for an item that has it', () => {
    const project = changeItem('item-post', { taxPercent: 0 })(taxed({ taxPercent: 15 }));
    expect(orderLine(worked(project).order.parts[0]!, 'item-post')!.cost.tax).toBe(0);
  });
});

describe('what is kept on hand', () => {
  const pipeM = surveyOf(square).crossings.get('G1')!.pipeM;

  it('is cut before anything is bought', () => {
    const { order } = worked(put(square, roll('r1', 'pipe:19', pipeM + 0.2), roll('r2', 'pipe', 200)));
    const [part] = order.parts as [OrderPart];
    expect(orderLine(part, 'item-pipe-19-50')).toBeUndefined();
    const list = part.cutLists.find(({ key }) => key === 'pipe:19')!;
    expect(list.rolls).toHaveLength(1);
    expect(list.rolls[0]).toMatchObject({ bought: false, lengthM: pipeM + 0.2 });
  });

  it('is not enough when the trim and the loss at cuts are taken off', () => {
    const project = put(square, roll('r1', 'pipe:19', pipeM + 0.2), { ...orderDefaults, rollTrimM: 0.3 });
    expect(worked(project).order.parts[0]!.cutLists[0]!.rolls[0]!.bought).toBe(true);
  });
});

describe('a piece longer than every roll', () => {
  it('is named, with what it is for', () => {
    let project = square;
    for (const length of [50, 100, 200]) project = deleteItem(`item-pipe-19-${length}`)(project);
    const { findings } = worked(put(project, roll('r1', 'pipe:19', 5)));
    expect(findings[0]).toMatchObject({ rule: 'cutTooLong', severity: 'error', thingIds: ['G1'] });
    expect(findings[0]!.message).toContain('G1');
  });
});

describe('stages', () => {
  const newId = countingIds();
  const first = line('F1', [
    [0, 0],
    [100, 0],
  ]);
  const second = line('F2', [
    [100, 0],
    [100, 100],
  ]);
  const base = drawing(
    first,
    second,
    ...bridgedGateway('G1', 'F2', 50),
    cutOut('S1', { on: 'gateway', gatewayId: 'G1', post: 'start' }),
  );
  const staged = addStage('Next year')(addStage('This spring')(base, newId), newId);
  const [spring, next] = stagesOf(staged) as [Stage, Stage];
  const project = putInStage(['F2'], next.id)(putInStage(['F1'], spring.id)(staged));

  it('take what hangs on a thing along with it', () => {
    const stageOf = stageOfThing(project);
    expect(['F1', 'F2', 'G1', 'S1'].map((id) => stageOf(id)?.name)).toEqual([
      'This spring',
      'Next year',
      'Next year',
      'Next year',
    ]);
  });

  it('put in a shared post with the first', () => {
    const [one, two] = worked(project).order.parts as [OrderPart, OrderPart];
    const amount = (part: OrderPart, key: string) =>
      part.quantities.find((quantity) => quantity.key === key)?.amount ?? 0;
    expect([amount(one, 'strainer'), amount(two, 'strainer')]).toEqual([2, 1]);
  });

  it('order together no more than the whole job does', () => {
    const whole = worked(base).order.parts[0]!;
    const parts = worked(project).order.parts;
    for (const { item: ordered, packs } of whole.lines) {
      const inStages = parts.reduce((sum, part) => sum + (orderLine(part, ordered.id)?.packs ?? 0), 0);
      if (ordered.unit === 'each') expect(inStages, ordered.name).toBe(packs);
    }
  });

  it('leave what is in none to a part of its own', () => {
    const parts = worked(putInStage(['F1'], spring.id)(staged)).order.parts;
    expect(parts.map(({ stage }) => stage?.name ?? null)).toEqual(['This spring', 'Next year', null]);
  });

  it('can change places and go', () => {
    expect(stagesOf(moveStage(next.id, -1)(project)).map(({ name }) => name)).toEqual(['Next year', 'This spring']);
    expect(moveStage(spring.id, -1)(project)).toBe(project);
    const without = deleteStage(spring.id)(project);
    expect([...without.stageMark.values()].map(({ thingId }) => thingId)).toEqual(['F2']);
  });

  it('lose the mark of a thing that is deleted', () => {
    const after = deleteThings([{ kind: 'fenceLine', id: 'F2' }])(project);
    expect([...after.stageMark.values()].map(({ thingId }) => thingId)).toEqual(['F1']);
    const gone = deleteThings([{ kind: 'stage', id: spring.id }])(project);
    expect([...gone.stageMark.values()].map(({ thingId }) => thingId)).toEqual(['F2']);
  });

  it('hand what they have left of a roll to the next', () => {
    const more = drawing(first, second, ...bridgedGateway('G1', 'F1', 50), ...bridgedGateway('G2', 'F2', 50));
    let both = addStage('B')(addStage('A')(more, newId), newId);
    const [a, b] = stagesOf(both) as [Stage, Stage];
    both = putInStage(['F2'], b.id)(putInStage(['F1'], a.id)(both));
    const [one, two] = worked(both).order.parts as [OrderPart, OrderPart];
    expect(orderLine(one, 'item-pipe-19-50')!.packs).toBe(1);
    expect(orderLine(two, 'item-pipe-19-50')).toBeUndefined();
    expect(two.cutLists[0]!.rolls[0]!.from).toMatchObject({ name: message('order.cutList.leftOver') });
  });
});

describe('the price list', () => {
  it('begins with plain goods, each id and name once, every kit made of items that are there', () => {
    const { items, kits } = startingPrices();
    expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
    expect(new Set(items.map(({ name }) => name)).size).toBe(items.length);
    expect(items.every(({ invented }) => invented)).toBe(true);
    const ids = new Set(items.map(({ id }) => id));
    for (const { parts } of kits) for (const { itemId } of parts) expect(ids).toContain(itemId);
  });

  it('names fence wire by gauge and mass, and holds as much as that mass is long', () => {
    const wires = startingPrices().items.filter(({ measure }) => measure?.startsWith('wire:'));
    // 25 kg / (7,850 kg/m3 x area) of steel, 10 kg / (2,703 kg/m3 x area) of aluminium.
    expect(wires.map(({ name, packSize }) => [name, packSize])).toEqual([
      ['Steel wire 1.6 mm, coil of 25 kg, about 1,584 m', 1584],
      ['Steel wire 2.0 mm, coil of 25 kg, about 1,014 m', 1014],
      ['Steel wire 2.5 mm, coil of 25 kg, about 649 m', 649],
      ['Steel wire 4.0 mm, coil of 25 kg, about 253 m', 253],
      ['Aluminium wire 2.0 mm, coil of 10 kg, about 1,178 m', 1178],
      ['Aluminium wire 2.5 mm, coil of 10 kg, about 754 m', 754],
    ]);
    expect(wires.every(({ note }) => note.includes('the label says goes before it'))).toBe(true);
    const barbed = startingPrices().items.find(({ measure }) => measure === 'barbedWire')!;
    expect(barbed.name).toContain('assumed');
  });

  it('offers live cable by core, diameter and rating, and no building wire', () => {
    const cables = startingPrices().items.filter(({ measure }) => measure?.startsWith('cable:'));
    expect(cables.length).toBeGreaterThan(0);
    for (const { name } of cables)
      expect(name).toMatch(/^Fence lead-out cable, .* core .* mm, rated 10 kV or more, roll/);
    expect(startingPrices().items.some(({ name }) => name.includes('mm²'))).toBe(false);
  });

  it('comes into the file with the first change, whole', () => {
    const project = changeItem('item-post', { price: 11 })(square);
    expect(project.catalogueItem.size).toBe(startingPrices().items.length);
    expect(project.catalogueItem.get('item-post')).toMatchObject({ price: 11, invented: false });
    expect(project.catalogueItem.get('item-stay')).toMatchObject({ invented: true });
    expect([...allThings(project)].some(({ kind }) => kind === 'kit')).toBe(true);
  });

  it('keeps prices out that are none', () => {
    expect(() => changeItem('item-post', { price: -1 })(square)).toThrow(EditRefused);
    expect(() => changeItem('item-post', { packSize: 0 })(square)).toThrow(EditRefused);
    expect(() => changeItem('nothing', { price: 1 })(square)).toThrow(EditRefused);
  });

  it('loses an item with its place in kits', () => {
    const project = deleteItem('item-latch')(square);
    expect(project.kit.get('kit-gateway-single')!.parts.map(({ itemId }) => itemId)).toEqual(['item-hinge-set']);
  });

  it('can have kits added, changed and taken out', () => {
    const added = addKit('Strainer with stay', 'strainer', [{ itemId: 'item-strainer', amount: 1 }])(
      square,
      countingIds(),
    );
    const kit = [...added.kit.values()].find(({ measure }) => measure === 'strainer')!;
    const changed = changeKit(kit.id, { parts: [...kit.parts, { itemId: 'item-staple', amount: 4 }] })(added);
    expect(orderLine(worked(changed).order.parts[0]!, 'item-staple')!.needed).toBe(16);
    expect(deleteKit(kit.id)(changed).kit.has(kit.id)).toBe(false);
    expect(() => changeKit(kit.id, { parts: [{ itemId: 'x', amount: 0 }] })(changed)).toThrow(EditRefused);
  });

  it('serves a sort in general where nothing serves just that kind', () => {
    const wanted = { name: message('order.goods.stay'), key: 'gate', unit: 'each' } as const;
    const project = changeItem('catalogueItem-1', { price: 300 })(addItemFor(wanted)(square, countingIds()));
    expect(orderLine(worked(project).order.parts[0]!, 'catalogueItem-1')).toMatchObject({
      packs: 1,
      cost: { net: 300 },
    });
  });

  it('has labour rates', () => {
    expect(setLabourRate('gateway', 99)(square).labourRate.get('labour:gateway')).toMatchObject({
      rate: 99,
      invented: false,
    });
    const open = worked(setLabourRate('gateway', null)(square));
    expect(open.order.total.unpriced).toBe(1);
    expect(open.findings.find(({ rule }) => rule === 'noPrice')!.message).toContain('Hang a gateway');
  });
});

describe('a price list of an older version', () => {
  const thick = drawing(
    newFenceType('thick', 'Thick', { wireId: 'steel-4' }),
    line(
      'F1',
      [
        [0, 0],
        [1000, 0],
      ],
      { typeId: 'thick' },
    ),
  );
  const older = changeItem('item-wire-steel-4', { packSize: 650, name: 'Steel wire 4.0 mm, coil of 650 m' })(thick);

  it('stays as it is; a coil that does not go with its gauge is told, and repaired when asked', () => {
    const { order, findings } = worked(older);
    expect(orderLine(order.parts[0]!, 'item-wire-steel-4')).toMatchObject({ packs: 2 });
    const coil = findings.find(({ rule }) => rule === 'coilLength')!;
    // 650 m x 7,850 kg/m3 x pi/4 (4 mm)^2 = 64.1 kg.
    expect(coil.message).toContain('650 m of this wire weigh about 64 kg; a coil of 25 kg holds about 253 m');
    const repairedList = coil.fixes[0]!.edit(older, countingIds());
    expect(repairedList.catalogueItem.get('item-wire-steel-4')).toMatchObject({
      packSize: 253,
      name: 'Steel wire 4.0 mm, coil of 25 kg, about 253 m',
      price: 150,
      invented: true,
    });
    // (1,000 + 2 x 0.5) m and 3 % of waste in coils of 253 m.
    expect(orderLine(worked(repairedList).order.parts[0]!, 'item-wire-steel-4')).toMatchObject({ packs: 5 });
    expect(worked(repairedList).findings.map(({ rule }) => rule)).not.toContain('coilLength');
  });

  it('says nothing of a coil as somebody weighed it', () => {
    const own = changeItem('item-wire-steel-4', { packSize: 400, name: 'Coil of the merchant' })(thick);
    expect(worked(own).findings.map(({ rule }) => rule)).not.toContain('coilLength');
  });
});

describe('the wires of a kilometre of boundary (worked by hand)', () => {
  const boundary = (type: FenceType) =>
    worked(
      drawing(
        type,
        line(
          'F1',
          [
            [0, 0],
            [999.999, 0],
          ],
          { typeId: type.id },
        ),
      ),
    );
  const seven = startingFenceTypes().find(({ id }) => id === 'ft-boundary')!;

  it('seven of 1,001 m and 3 % of waste: 7,217 m, twelve coils of 649 m', () => {
    const { order, findings } = boundary(seven);
    expect(orderLine(order.parts[0]!, 'item-wire-steel-2.5')).toMatchObject({ packs: 12 });
    expect(findings.map(({ rule }) => rule)).not.toContain('plainWiresNotEntered');
  });

  it('of an older file, where three are entered, says in the order that it is short, and by how many', () => {
    const { plainWires: _, ...older } = seven;
    const { order, findings } = boundary(older);
    expect(orderLine(order.parts[0]!, 'item-wire-steel-2.5')).toMatchObject({ packs: 5 });
    expect(findings.find(({ rule }) => rule === 'plainWiresNotEntered')!.fixes[0]!.label).toBe('Enter 4 plain wires');
  });
});

describe('live cable that is a size of building wire', () => {
  const [made, crossing] = bridgedGateway('G1', 'F1', 50);
  const wired = put(square, made, { ...crossing, cableId: 'cable-copper-2.5mm2' });
  const ofCable = (project: Project) =>
    worked(project).findings.filter(({ message }) => message.includes('Building wire'));

  it('is not in the price list, and the order says so once and offers no item for it', () => {
    const [said, ...more] = ofCable(wired);
    expect(more).toEqual([]);
    expect(said).toMatchObject({ rule: 'buildingWireOrdered', severity: 'warning', fixes: [], thingIds: ['G1'] });
    expect(said!.message).toContain('not in the order');
    expect(said!.remedy).toContain('rated 10 kV or more');
  });

  it('is ordered as before from a list of an older version that has it, and told all the same', () => {
    const old = { id: 'old', name: 'Insulated cable, copper 2.5 mm², roll of 50 m', packSize: 50, price: 190 };
    const listed = put(wired, item({ ...old, measure: 'cable:cable-copper-2.5mm2', unit: 'm' }));
    const [part] = worked(listed).order.parts as [OrderPart];
    expect(orderLine(part, 'old')).toMatchObject({ packs: 1, cost: { net: 190 } });
    expect(ofCable(listed)[0]!.message).toContain('it is in this order as the live cable');
  });
});

describe('a line of live cable', () => {
  it('carries the caution, whatever the price list calls it; others do not', () => {
    const { lines } = worked(square).order.parts[0]!;
    const cautioned = lines.filter((one) => lineCaution(one) !== null).map((one) => one.item.id);
    expect(cautioned).toEqual(['item-cable-steel-2.5-50']);
    expect(inEnglish(lineCaution(orderLine(worked(square).order.parts[0]!, 'item-cable-steel-2.5-50')!))).toContain(
      '10 kV',
    );
  });
});

describe('coils of wire', () => {
  it('are said to be worked out, where there are any', () => {
    const { lines } = worked(square).order.parts[0]!;
    expect(inEnglish(coilNote(lines))).toContain('what the label says goes before them');
    expect(coilNote(lines.filter(({ item: { id } }) => !id.startsWith('item-wire')))).toBe(null);
  });
});

describe('terms', () => {
  it('are the defaults until they are changed', () => {
    expect(orderSettingsOf(square)).toEqual(orderDefaults);
    expect(orderSettingsOf(changeTerms({ currency: 'NZD' })(square))).toEqual({ ...orderDefaults, currency: 'NZD' });
    expect(() => changeTerms({ currency: 'dollars' })(square)).toThrow(EditRefused);
  });

  it('name droppers by fence type', () => {
    const project = setDroppers('ft-2', 3)(square);
    expect(project.fenceMake.get('make:ft-2')?.droppersPerBay).toBe(3);
    expect(setDroppers('ft-2', 0)(project).fenceMake.size).toBe(0);
  });
});

describe('kept plans', () => {
  const newId = countingIds();
  const kept = keepPlan('', '2026-05-01')(square, newId);
  const [plan] = kept.keptPlan.values();

  it('are named in turn', () => {
    expect(plan!.name).toBe('Plan A');
    expect([...keepPlan('', '2026-05-01')(kept, newId).keptPlan.values()].map(({ name }) => name)).toEqual([
      'Plan A',
      'Plan B',
    ]);
  });

  it('give the drawing back, and leave prices and stages as they are', () => {
    const changed = changeItem('item-post', { price: 12 })(deleteThings([{ kind: 'fenceLine', id: 'F1' }])(kept));
    expect(changed.gateway.size).toBe(0);
    const back = goBackTo(plan!.id)(changed);
    expect([...back.fenceLine.values()]).toEqual([...square.fenceLine.values()]);
    expect([...back.crossing.values()]).toEqual([...square.crossing.values()]);
    expect(back.catalogueItem.get('item-post')!.price).toBe(12);
    expect(goBackTo(plan!.id)(back)).toBe(back);
    expect(deleteKeptPlan(plan!.id)(back).keptPlan.size).toBe(0);
  });

  it('take along what was said of things that they do not have', () => {
    const stage = { kind: 'stage', id: 'spring', name: 'Spring', rank: 0, note: '' } as const;
    const further = addFenceLine({ path: [...square.fenceLine.values()][0]!.path, typeId: 'ft-2' }, () => 'F9')(kept);
    const staged = putInStage(['F9'], 'spring')(put(further, stage));
    const back = goBackTo(plan!.id)(staged);
    expect(back.stageMark.size).toBe(0);
    expect(back.stage.size).toBe(1);
  });

  it('are weighed by cost, fence, sections and switches', () => {
    const figures = planFigures(square, surveyOf(square), null);
    expect(figures).toMatchObject({ gateways: 1, switches: 0, sections: 1 });
    expect(figures.fenceM).toBeCloseTo(396, 0);
    expect(figures.cost.net).toBe(worked(square).order.total.net);
  });
});
