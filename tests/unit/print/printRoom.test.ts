import { setImmediate } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { SheetProblem } from '../../../core/sheets/sheetProblem.ts';
import { createPrintRoom } from '../../../electron/print/printRoom.ts';
import { printSheets } from '../../../electron/print/printSheets.ts';
import { baseOptions, inventedThings } from '../sheets/inventedProperty.ts';

const room = createPrintRoom();

it('prints what the printers themselves print, and leaves its own thread free meanwhile', async () => {
  let done = false;
  const printed = room.printSheets(inventedThings(), baseOptions).finally(() => (done = true));
  for (let turn = 0; turn < 20; turn++) await setImmediate();
  expect(done).toBe(false);
  expect(await printed).toEqual(await printSheets(inventedThings(), baseOptions));
});

it('hands on why sheets cannot be made', async () => {
  const tooLarge = { ...baseOptions, scaleDenominator: 1 };
  const wrong = await printSheets(inventedThings(), tooLarge).catch((error: unknown) => error);
  expect(wrong).toBeInstanceOf(SheetProblem);
  const problem = await room.printSheets(inventedThings(), tooLarge).catch((error: unknown) => error);
  expect(problem).toBeInstanceOf(SheetProblem);
  expect(problem).toEqual(wrong);
  expect((problem as SheetProblem).remedy).toBe((wrong as SheetProblem).remedy);
});
