import { expose } from 'comlink';
import { projectOf } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { type PlanFigures, planFigures } from '../../core/quantities/comparePlans.ts';
import { type Order, orderOf } from '../../core/quantities/order/order.ts';
import { priceListOf } from '../../core/quantities/order/priceList.ts';
import { orderSettingsOf, takeOff } from '../../core/quantities/takeOff.ts';
import type { TakeOff } from '../../core/quantities/types.ts';
import { estimateOf } from '../../core/survey/power/estimateOf.ts';
import { powerOf } from '../../core/survey/power/powerOf.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { hearLocale } from './workerLocale.ts';

/** Counts and prices beside the window: a hard cut list may take a second or two. */
const orderRoom = {
  order(things: readonly Thing[]): { readonly takeOff: TakeOff; readonly order: Order } {
    const project = projectOf(things);
    const counted = takeOff({ project, survey: surveyOf(project) });
    const settings = orderSettingsOf(project);
    return {
      takeOff: counted,
      order: orderOf({ project, takeOff: counted, prices: priceListOf(project), settings }),
    };
  },
  figures(things: readonly Thing[]): PlanFigures {
    const project = projectOf(things);
    const survey = surveyOf(project);
    const weakest = estimateOf(powerOf(project, survey)).weakest;
    return planFigures(project, survey, weakest?.volts ?? null);
  },
};
export type OrderFunctions = typeof orderRoom;

hearLocale();
expose(orderRoom);
