/** The order's PDF seen through poppler, a reader that is not ours. Where it is not installed see `describeWith`. */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { OrderOptions } from '../../../core/api/orderOptions.ts';
import { orderDefaults } from '../../../core/model/orderDefaults.ts';
import { allThings, projectOf, put } from '../../../core/model/project.ts';
import type { Thing } from '../../../core/model/things.ts';
import { addStage, putInStage } from '../../../core/quantities/edits/changeStages.ts';
import { orderOf } from '../../../core/quantities/order/order.ts';
import { priceListOf } from '../../../core/quantities/order/priceList.ts';
import { takeOff } from '../../../core/quantities/takeOff.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { formatMoney } from '../../../core/words/numbers/write.ts';
import { printJob } from '../../../electron/print/printJob.ts';
import { describeWith } from '../../support/describeWith.ts';
import { bridgedGateway, drawing, line, ring } from '../../support/drawings.ts';
import { countingIds } from '../../support/ids.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const printOrder = (things: readonly Thing[], options: OrderOptions) => printJob({ what: 'order', options }, things);

const options: OrderOptions = { locale: 'en-NZ', withCutLists: true, withQuantities: true, date: '2026-05-12' };

const settings = { ...orderDefaults, currency: 'NZD', taxPercent: 15 };
const drawn = drawing(
  settings,
  ring('F1', [
    [0, 0],
    [100, 0],
    [100, 100],
    [0, 100],
  ]),
  line('F2', [
    [100, 0],
    [200, 0],
  ]),
  ...bridgedGateway('G1', 'F1', 50, { widthM: 4.2 }),
  ...bridgedGateway('G2', 'F2', 50, { widthM: 4.2 }),
);

async function textOf(things: readonly Thing[], wanted = options): Promise<string> {
  const file = join(temporaryFolder(), 'order.pdf');
  writeFileSync(file, (await printOrder(things, wanted)).bytes);
  return execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
}

describeWith(['pdftotext'], 'the order through pdftotext', () => {
  const things = [...allThings(drawn)];
  const order = orderOf({
    project: drawn,
    takeOff: takeOff({ project: drawn, survey: surveyOf(drawn) }),
    prices: priceListOf(drawn),
    settings,
  });
  it('says what it comes to, in the currency and the habits of the place', async () => {
    const text = await textOf(things);
    expect(text).toContain(formatMoney(order.total.gross, { currency: 'NZD' }));
  });

  it('writes figures and the date by the habits that were asked for', async () => {
    const german = (await textOf(things, { ...options, locale: 'de-DE' })).replace(/\s/g, ' ');
    const total = formatMoney(order.total.gross, { currency: 'NZD' });
    expect(total).toMatch(/^[\d.]+,\d\d\sNZ\$$/);
    expect(german).toContain(total.replace(/\s/g, ' '));
    expect(german).toContain('12.05.2026');
    const usual = await textOf(things, { ...options, locale: undefined });
    expect(usual).toContain('12 May 2026');
    expect(usual).toContain(formatMoney(order.total.gross, { currency: 'NZD' }));
  });

  it('has every item, every roll and every piece with its label', async () => {
    const words = (await textOf(things)).replace(/\s+/g, ' ');
    for (const { item, cost } of order.parts[0]!.lines) {
      expect(words, item.name).toContain(item.name.split(',')[0]!);
      expect(words).toContain(formatMoney(cost.net, { currency: 'NZD' }));
    }
    for (const { rolls } of order.parts[0]!.cutLists) {
      for (const { cuts } of rolls) for (const { lengthM } of cuts) expect(words).toContain(`${lengthM.toFixed(2)} m`);
    }
  });

  it('says that prices are invented and the property too, and carries the caution', async () => {
    const text = await textOf(things);
    expect(text.replace(/\s+/g, ' ')).toContain('are invented, to show how the list works');
    expect(text).toContain('Energiser off and fence proven dead before work');
  });

  it('says at the live cable what it must be rated for', async () => {
    const words = (await textOf(things)).replace(/\s+/g, ' ');
    expect(words).toContain('rated 10 kV or more');
    expect(words).toContain('never building wire');
  });

  it('leaves out what was not asked for', async () => {
    const short = await textOf(things, { ...options, withCutLists: false, withQuantities: false });
    expect(short).not.toContain('Cut lists');
    expect(short).not.toContain('Made up of');
  });

  it('has a part for each stage', async () => {
    const newId = countingIds();
    const staged = putInStage(['F2'], 'stage-1')(addStage('Next year')(drawn, newId));
    const [stage] = staged.stage.values();
    const inStage = putInStage(['F2'], stage!.id)(staged);
    const words = await textOf([...allThings(inStage)]);
    expect(words).toContain('Next year together');
    expect(words).toContain('In no stage together');
  });

  it('is whole for a property with nothing drawn', async () => {
    const empty = await textOf([...allThings(put(projectOf([...drawn.property.values()]), settings))]);
    expect(empty).toContain('Nothing is planned that would have to be ordered.');
  });
});

it('has a name that every system takes', async () => {
  const property = { ...[...drawn.property.values()][0]!, name: 'A/B: "farm"' };
  const made = await printOrder([...allThings(put(drawn, property))], options);
  expect(made.fileName).toBe('A-B- -farm order 2026-05-12.pdf');
  expect(made.fileName).not.toMatch(/[<>:"/\\|?*]/);
});
