import { type Project, projectOf } from '../../core/model/project.ts';
import { planFigures } from '../../core/quantities/comparePlans.ts';
import { orderOf } from '../../core/quantities/order/order.ts';
import { priceListOf } from '../../core/quantities/order/priceList.ts';
import { orderSettingsOf, takeOff } from '../../core/quantities/takeOff.ts';
import { estimateOf } from '../../core/survey/power/estimateOf.ts';
import { powerOf } from '../../core/survey/power/powerOf.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import type { FromOrderRoom, ToOrderRoom } from './orderMessages.ts';
import { hearLocale } from './workerLocale.ts';

hearLocale();

/** Counts and prices beside the window: a hard cut list may take a second or two. */
self.addEventListener('message', ({ data: { type, number, things } }: MessageEvent<ToOrderRoom>) => {
  const project = projectOf(things);
  self.postMessage(type === 'order' ? order(project, number) : figures(project, number));
});

function order(project: Project, number: number): FromOrderRoom {
  try {
    const counted = takeOff({ project, survey: surveyOf(project) });
    const settings = orderSettingsOf(project);
    const worked = orderOf({ project, takeOff: counted, prices: priceListOf(project), settings });
    return { type: 'order', number, takeOff: counted, order: worked };
  } catch (error) {
    return { type: 'failed', number, message: error instanceof Error ? error.message : String(error) };
  }
}

function figures(project: Project, number: number): FromOrderRoom {
  try {
    const survey = surveyOf(project);
    const weakest = estimateOf(powerOf(project, survey)).weakest;
    return { type: 'figures', number, figures: planFigures(project, survey, weakest?.volts ?? null) };
  } catch {
    return { type: 'figures', number, figures: null };
  }
}
