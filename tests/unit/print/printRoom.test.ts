import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { expect, it, onTestFinished } from 'vitest';
import type { PrintJob } from '../../../core/api/printJob.ts';
import { SheetProblem } from '../../../core/sheets/sheetProblem.ts';
import { english } from '../../../core/words/en.ts';
import { setLanguage } from '../../../core/words/language.ts';
import { pseudo } from '../../../core/words/pseudo.ts';
import { printJob } from '../../../electron/print/printJob.ts';
import { createPrintRoom } from '../../../electron/print/printRoom.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';
import { baseOptions, inventedThings } from '../sheets/inventedProperty.ts';

const print = createPrintRoom();
const job: PrintJob = { what: 'sheets', options: baseOptions };
const tooLarge: PrintJob = { what: 'sheets', options: { ...baseOptions, scaleDenominator: 1 } };
const noPhotos = () => null;
const errorOf = (work: Promise<unknown>) => work.then(() => null).catch((error: unknown) => error);

it('prints what the printer itself prints, and leaves its own thread free meanwhile', async () => {
  let done = false;
  const printed = print(job, inventedThings(), noPhotos).finally(() => (done = true));
  for (let turn = 0; turn < 20; turn++) await setImmediate();
  expect(done).toBe(false);
  expect(await printed).toEqual(await printJob(job, inventedThings()));
});

it('hands on why sheets cannot be made', async () => {
  const wrong = await errorOf(printJob(tooLarge, inventedThings()));
  expect(wrong).toBeInstanceOf(SheetProblem);
  const problem = await errorOf(print(tooLarge, inventedThings(), noPhotos));
  expect(problem).toBeInstanceOf(SheetProblem);
  expect(problem).toEqual(wrong);
  expect((problem as SheetProblem).remedy).toBe((wrong as SheetProblem).remedy);
});

it('speaks the language that is set where it is asked', async () => {
  setLanguage(pseudo());
  onTestFinished(() => setLanguage(english));
  const { bytes } = await print(job, inventedThings(), noPhotos);
  expect(Buffer.from(bytes).toString('latin1')).toContain('/Lang (en-XA)');
  const problem = await errorOf(print(tooLarge, inventedThings(), noPhotos));
  expect(problem).toEqual(await errorOf(printJob(tooLarge, inventedThings())));
});

it('an error of the printer comes back with its words', async () => {
  const things = [{ ...inventedThings()[0], kind: 'tower' }] as never;
  expect(await errorOf(print(job, things, noPhotos))).toMatchObject({ message: expect.stringMatching(/./) as string });
});

it.each([
  ['dies', 'process.exit(3)', /has ended/],
  ['breaks', 'setTimeout(() => { throw new Error("out of ink"); }, 5)', /out of ink/],
  ['is no script', 'import nothing', /./],
])(
  'a thread that %s fails its jobs rather than leaving them, and the next job gets another',
  async (_what, script, why) => {
    const file = join(temporaryFolder(), 'broken.mjs');
    writeFileSync(file, script);
    const broken = createPrintRoom(file);
    const failures = await Promise.all([1, 2].map(() => errorOf(broken(job, inventedThings(), noPhotos))));
    for (const failure of failures) expect(failure).toMatchObject({ message: expect.stringMatching(why) as string });
    expect(await errorOf(broken(job, inventedThings(), noPhotos))).toBeInstanceOf(Error);
  },
);
