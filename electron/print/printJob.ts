import type { FindOptions } from '../../core/api/findOptions.ts';
import type { OrderOptions } from '../../core/api/orderOptions.ts';
import type { PackOptions } from '../../core/api/packOptions.ts';
import type { MadeFile } from '../../core/api/projectApi.ts';
import type { SheetOptions } from '../../core/api/sheetOptions.ts';
import type { Thing } from '../../core/model/things.ts';
import { setLocale, usualLocale } from '../../core/words/numbers/locale.ts';
import { printFind } from './printFind.ts';
import { printOrder } from './printOrder.ts';
import { printPack } from './printPack.ts';
import { printSheets } from './printSheets.ts';

/** Photos by the id of their bytes. */
export type Photos = ReadonlyMap<string, Uint8Array>;

/** What to print, as it goes to another thread: plain data. */
export type PrintJob = { readonly things: readonly Thing[] } & (
  | { readonly what: 'sheets'; readonly options: SheetOptions }
  | { readonly what: 'order'; readonly options: OrderOptions }
  | { readonly what: 'find'; readonly options: FindOptions }
  | { readonly what: 'pack'; readonly options: PackOptions; readonly photos: Photos }
);

/** The pages are laid out before anything is waited for, so that each job has its own habits of figures. */
export function runJob(job: PrintJob): Promise<MadeFile> {
  setLocale(job.options.locale ?? usualLocale);
  switch (job.what) {
    case 'sheets':
      return printSheets(job.things, job.options);
    case 'order':
      return printOrder(job.things, job.options);
    case 'find':
      return printFind(job.things, job.options);
    case 'pack':
      return printPack(job.things, (id) => job.photos.get(id) ?? null, job.options);
  }
}
