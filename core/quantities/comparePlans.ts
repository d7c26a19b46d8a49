import { largestOf } from '../model/extremes.ts';
import type { Project } from '../model/project.ts';
import type { Survey } from '../survey/types.ts';
import { orderOf, type Sum } from './order/order.ts';
import { priceListOf } from './order/priceList.ts';
import { orderSettingsOf, takeOff } from './takeOff.ts';

/** The figures by which plans are weighed against each other. */
export interface PlanFigures {
  readonly cost: Sum;
  readonly fenceM: number;
  readonly gateways: number;
  readonly switches: number;
  readonly sections: number;
  /** Of fence; 0 where there is no section. */
  readonly longestSectionM: number;
  /** Estimated peak at the weakest fed place; null where it is not known. */
  readonly weakestV: number | null;
}

/**
 * The figures of a drawing. Everything is counted, whether it stands yet or not, so that two plans of which one is
 * further on can be compared.
 */
export function planFigures(project: Project, survey: Survey, weakestV: number | null): PlanFigures {
  const settings = { ...orderSettingsOf(project), count: 'all' } as const;
  const counted = takeOff({ project, survey, settings });
  const order = orderOf({ project, takeOff: counted, prices: priceListOf(project), settings });
  return {
    cost: order.total,
    fenceM: survey.totals.fenceM,
    gateways: survey.totals.gateways,
    switches: survey.switches.length,
    sections: survey.sections.length,
    longestSectionM: Math.max(0, largestOf(survey.sections.map(({ lengthM }) => lengthM))),
    weakestV,
  };
}
