import type { OrderOptions } from '../../core/api/orderOptions.ts';
import type { MadeFile } from '../../core/api/projectApi.ts';
import { projectOf, propertyOf } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { orderOf } from '../../core/quantities/order/order.ts';
import { priceListOf } from '../../core/quantities/order/priceList.ts';
import { orderSettingsOf, takeOff } from '../../core/quantities/takeOff.ts';
import { orderFileName } from '../../core/sheets/fileName.ts';
import { cutListPages, type OrderPagesInput, orderPages, quantityPages } from '../../core/sheets/orderPages.ts';
import { numberPages } from '../../core/sheets/pageDraft.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { madeAt } from './madeAt.ts';
import { renderPdf } from './renderPdf.ts';
import { typefaces } from './typefaces.ts';

/** The order of a property with what was asked for besides, as one PDF. */
export async function printOrder(things: readonly Thing[], options: OrderOptions): Promise<MadeFile> {
  const project = projectOf(things);
  const property = propertyOf(project);
  const settings = orderSettingsOf(project);
  const counted = takeOff({ project, survey: surveyOf(project) });
  const input: OrderPagesInput = {
    project,
    property,
    takeOff: counted,
    order: orderOf({ project, takeOff: counted, prices: priceListOf(project), settings }),
    habits: { units: property.units, currency: settings.currency },
    date: options.date,
    measure: typefaces().measure,
  };
  const drafts = [
    ...orderPages(input),
    ...(options.withCutLists ? cutListPages(input) : []),
    ...(options.withQuantities ? quantityPages(input) : []),
  ];
  const bytes = await renderPdf(numberPages(drafts), {
    title: `${property.name}: order`,
    subject: property.invented ? 'Order for an invented example' : 'Order for a fence network',
    language: 'en',
    madeAt: madeAt(options.date),
  });
  return { fileName: orderFileName(property.name, options.date), mediaType: 'application/pdf', bytes };
}
