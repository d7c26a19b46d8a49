import { writeCutLists, writeOrder, writeQuantities } from '../../core/exchange/csv/orderCsv.ts';
import { writePriceList } from '../../core/exchange/csv/priceListCsv.ts';
import type { Project } from '../../core/model/project.ts';
import { orderOf } from '../../core/quantities/order/order.ts';
import { priceListOf } from '../../core/quantities/order/priceList.ts';
import { orderSettingsOf, takeOff } from '../../core/quantities/takeOff.ts';
import type { Survey } from '../../core/survey/types.ts';
import { localDate } from '../../core/words/dates.ts';
import { plainWords } from '../../core/words/figures.ts';
import { useApp } from './appState.ts';
import { say } from './choose.ts';
import { download } from './download.ts';
import { makePdf } from './makePdf.ts';
import { report } from './report.ts';
import { figuresOf } from './useFigures.ts';

/** Prints the order, with its cut lists and quantities, from the file as it stands. */
export async function printOrder(): Promise<void> {
  say(plainWords().window.frame.done.makingPdf, 'done');
  const options = {
    withCutLists: true,
    withQuantities: true,
    date: localDate(new Date()),
  };
  const made = await makePdf({ what: 'order', options });
  if (!made.ok) return report(made.problem);
  say(plainWords().window.frame.done.made({ file: made.value.fileName }), 'done');
}

export const saveOrderCsv = () =>
  saveCsv('order', (project, survey) =>
    writeOrder(worked(project, survey).order, orderSettingsOf(project).currency, figuresOf(project)),
  );

export const saveQuantitiesCsv = () =>
  saveCsv('quantities', (project, survey) => writeQuantities(worked(project, survey).counted, figuresOf(project)));

export const saveCutListsCsv = () =>
  saveCsv('cut lists', (project, survey) =>
    writeCutLists(
      worked(project, survey).order.parts.flatMap(({ cutLists }) => cutLists),
      figuresOf(project),
    ),
  );

export const savePriceListCsv = () => saveCsv('price list', (project) => writePriceList(priceListOf(project)));

function worked(project: Project, survey: Survey) {
  const counted = takeOff({ project, survey });
  const order = orderOf({
    project,
    takeOff: counted,
    prices: priceListOf(project),
    settings: orderSettingsOf(project),
  });
  return { counted, order };
}

function saveCsv(what: string, write: (project: Project, survey: Survey) => string): void {
  const { file } = useApp.getState();
  if (!file) return;
  // The mark at the front tells spreadsheets that the text is UTF-8.
  const bytes = new TextEncoder().encode(`\uFEFF${write(file.project, file.survey)}`);
  download({ fileName: `${file.fileName} ${what}.csv`, mediaType: 'text/csv;charset=utf-8', bytes });
}
