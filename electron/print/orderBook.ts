import type { OrderOptions } from '../../core/api/orderOptions.ts';
import { orderOf } from '../../core/quantities/order/order.ts';
import { priceListOf } from '../../core/quantities/order/priceList.ts';
import { orderSettingsOf, takeOff } from '../../core/quantities/takeOff.ts';
import { orderFileName } from '../../core/sheets/fileName.ts';
import { cutListPages, type OrderPagesInput, orderPages, quantityPages } from '../../core/sheets/orderPages.ts';
import { numberPages } from '../../core/sheets/pageDraft.ts';
import { figures } from '../../core/words/figures.ts';
import type { Book, Printed } from './printJob.ts';
import { typefaces } from './typefaces.ts';

/** The order of a property with what was asked for besides. */
export function orderBook({ project, property, survey }: Printed, options: OrderOptions): Book {
  const settings = orderSettingsOf(project);
  const counted = takeOff({ project, survey });
  const input: OrderPagesInput = {
    project,
    property,
    takeOff: counted,
    order: orderOf({ project, takeOff: counted, prices: priceListOf(project), settings }),
    habits: { units: property.units, currency: settings.currency },
    date: options.date,
    measure: typefaces().measure,
    f: figures(property.units),
  };
  const said = input.f.words.sheets.book;
  const drafts = [
    ...orderPages(input),
    ...(options.withCutLists ? cutListPages(input) : []),
    ...(options.withQuantities ? quantityPages(input) : []),
  ];
  return {
    pages: numberPages(drafts, input.f),
    title: said.order,
    subjects: [said.orderSubject, said.orderInvented],
    fileName: orderFileName(property.name, options.date),
    date: options.date,
  };
}
