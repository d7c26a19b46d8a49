import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { leafItems } from '../../../core/drawing/displayList.ts';
import { writeCutLists, writeOrder, writeQuantities } from '../../../core/exchange/csv/orderCsv.ts';
import { type Project, projectOf, propertyOf, put } from '../../../core/model/project.ts';
import type { OrderSettings } from '../../../core/model/things.ts';
import { addItemFor } from '../../../core/quantities/edits/changePrices.ts';
import { keepPlan } from '../../../core/quantities/edits/keepPlan.ts';
import {
  coilNote,
  cutListProof,
  cutListSentence,
  lineCaution,
  orderSentence,
  packText,
} from '../../../core/quantities/formatOrder.ts';
import { labourUnits, workMeasure } from '../../../core/quantities/measures.ts';
import { orderOf } from '../../../core/quantities/order/order.ts';
import { priceListOf } from '../../../core/quantities/order/priceList.ts';
import { startingPrices } from '../../../core/quantities/order/startingPrices.ts';
import { orderFindings } from '../../../core/quantities/orderFindings.ts';
import { orderSettingsOf, takeOff } from '../../../core/quantities/takeOff.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { english } from '../../../core/words/en.ts';
import { figures } from '../../../core/words/figures.ts';
import { setLanguage } from '../../../core/words/language.ts';
import type { Message } from '../../../core/words/message.ts';
import { formatMoney } from '../../../core/words/numbers/write.ts';
import { pseudo } from '../../../core/words/pseudo.ts';
import { orderBook } from '../../../electron/print/orderBook.ts';
import { drawing, line } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';
import { fullProperty } from '../../support/fullProperty.ts';
import { countingIds } from '../../support/ids.ts';
import { englishIn, expectFromCatalogue, namesIn } from '../../support/pseudo.ts';

const date = '2031-05-02';
const full = projectOf(fullProperty().filter(({ kind }) => kind !== 'handover'));
/** The same with the price list that every property begins with. */
const unpriced: Project = { ...full, catalogueItem: new Map(), kit: new Map(), labourRate: new Map() };
/** Without a currency, and with a price list that has none of what is asked for. */
const bare = put(full, { ...orderSettingsOf(full), currency: null });

function worked(project: Project, count: OrderSettings['count'] = 'all') {
  const settings = { ...orderSettingsOf(project), count };
  const counted = takeOff({ project, survey: surveyOf(project), settings });
  const input = { project, takeOff: counted, prices: priceListOf(project), settings };
  const order = orderOf(input);
  return { ...input, counted, order, findings: orderFindings(input, order) };
}

/** Everything that is said of an order by message. */
function* saidOf({ counted, order, findings }: ReturnType<typeof worked>): Generator<Message> {
  for (const { name, pieces } of counted.quantities) {
    yield name;
    for (const { text } of pieces) yield text;
  }
  for (const { message, remedy, fixes } of findings) {
    yield message;
    yield remedy;
    for (const { label } of fixes) yield label;
  }
  for (const { lines, cutLists } of order.parts) {
    yield* [coilNote(lines), ...lines.map(lineCaution)].filter((one) => one !== null);
    for (const list of cutLists) {
      yield list.name;
      yield cutListProof(list);
      for (const roll of list.rolls) if (!roll.bought) yield roll.from.name;
      for (const { label } of [...list.tooLong, ...list.without]) yield label;
    }
  }
}

describe.each([
  ['the full property', full],
  ['the full property, with the list that every property begins with', unpriced],
  ['the full property, without a currency', bare],
])('what the order of %s says', (_, project) => {
  const names = new Set([...namesIn(project), ...namesIn(startingPrices().items)]);
  it.each(['planned', 'all'] as const)('comes from the catalogue, with %s counted', (count) => {
    const said = [...saidOf(worked(project, count))];
    expect(said.length).toBeGreaterThan(20);
    for (const one of said) expectFromCatalogue(one, names);
  });
});

describe('in another language', () => {
  beforeEach(() => setLanguage(pseudo()));
  afterEach(() => setLanguage(english));

  it('the price list that every property begins with is in it, the same as long as that is active', () => {
    const { items, kits } = startingPrices();
    const names = [...items, ...kits].map(({ name }) => name);
    const notes = items.map(({ note }) => note);
    expect(englishIn([...names, ...notes].join('\n'))).toBe('');
    expect(new Set(items.map(({ name }) => name)).size).toBe(items.length);
    expect(priceListOf(unpriced)).toBe(priceListOf(unpriced));
    setLanguage(english);
    expect(startingPrices().items.map(({ id }) => id)).toEqual(items.map(({ id }) => id));
    expect(startingPrices().items[0]!.name).toContain('Steel wire 1.6 mm, coil of 25 kg');
  });

  it('answers, packs and work are in it', () => {
    const f = figures('metric');
    const habits = { units: 'metric', currency: 'NZD' } as const;
    const { order, counted } = worked(unpriced);
    const said = [
      orderSentence(order, counted, habits, f),
      orderSentence(order, { ...counted, quantities: [] }, habits, f),
      ...order.parts.flatMap(({ cutLists }) => cutLists.map((list) => cutListSentence(list, f))),
      formatMoney(null, habits),
      packText({ ...startingPrices().items[0]!, unit: 'each', packSize: 1 }, f),
      packText({ ...startingPrices().items[0]!, unit: 'each', packSize: 20 }, f),
      ...labourUnits.map((per) => f.say(workMeasure(per).name)),
    ];
    expect(englishIn(said.join('\n'))).toBe('');
  });

  it('what the app names is named in it once', () => {
    const kept = keepPlan('', date)(full, countingIds());
    expect([...kept.keptPlan.values()].map(({ name }) => englishIn(name, ['At first', 'As drawn']))).not.toContain(
      'Plan',
    );
    const quantity = worked(full).counted.quantities[0]!;
    const added = addItemFor(quantity)(full, countingIds());
    const item = [...added.catalogueItem.values()].find(
      ({ measure, price }) => measure === quantity.key && price === null,
    )!;
    expect(item.name).not.toBe('');
    expect(englishIn(item.name)).toBe('');
  });

  it('the tables and the pages of an order are in it', () => {
    const { order, counted } = worked(unpriced);
    const f = figures('metric');
    const names = [...namesIn(full)];
    const codes = ['each', 'km'];
    const tables = [
      writeOrder(order, null, f),
      writeQuantities(counted, f),
      writeCutLists(
        order.parts.flatMap(({ cutLists }) => cutLists),
        f,
      ),
    ];
    for (const table of tables) expect(englishIn(table, [...names, ...codes])).toBe('');
    const printed = {
      project: unpriced,
      property: propertyOf(unpriced),
      survey: surveyOf(unpriced),
      photos: new Map(),
    };
    const { pages } = orderBook(printed, { withCutLists: true, withQuantities: true, date });
    const texts = pages.flatMap(({ items }) =>
      [...leafItems(items)].flatMap((each) => (each.kind === 'text' ? [each.text] : [])),
    );
    expect(texts.length).toBeGreaterThan(200);
    expect(englishIn(texts.join('\n'), [...names, 'NZ$', 'km', '2 May 2031'])).toBe('');
  });
});

describe('a coil as older versions named it', () => {
  const old = {
    ...startingPrices().items.find(({ measure }) => measure === 'wire:steel-1.6')!,
    packSize: 650,
    name: 'Steel wire 1.6 mm, coil of 650 m',
  };
  const type = { ...full.fenceType.values().next().value!, id: 'ft-thin', wireId: 'steel-1.6' };
  const fence = line(
    'F1',
    [
      [0, 0],
      [900, 0],
    ],
    { typeId: type.id },
  );

  afterEach(() => setLanguage(english));

  it('is known in every language', () => {
    const project = put(drawing(type, fence), old);
    setLanguage(pseudo());
    const found = worked(project).findings.find(({ rule }) => rule === 'coilLength');
    expect(inEnglish(found?.message)).toContain('a coil of 25 kg holds about');
  });
});
