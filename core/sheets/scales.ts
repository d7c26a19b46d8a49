import type { SheetOptions } from '../api/sheetOptions.ts';
import type { Box } from '../geometry/box.ts';
import type { Project } from '../model/project.ts';
import type { Survey } from '../survey/types.ts';
import { fixed } from '../words/numbers/write.ts';
import { propertyExtent } from './extent.ts';
import { mostSheets, sheetsToCover } from './sheetPlan.ts';

/** Scales that a plan is drawn at, common practice; 1 to each of these. */
export const roundScales: readonly number[] = [
  100, 200, 250, 500, 1000, 1250, 2000, 2500, 5000, 7500, 10_000, 12_500, 15_000, 20_000, 25_000, 30_000, 40_000,
  50_000, 75_000, 100_000, 150_000, 200_000, 250_000, 500_000, 1_000_000,
];

export interface ScaleChoice {
  readonly scaleDenominator: number;
  /** Map sheets at this scale, before blank ones are left out. */
  readonly sheets: number;
}

type PaperChoice = Pick<SheetOptions, 'paper' | 'orientation'>;

/**
 * The round scales that make sense for a property, largest drawing first, with the sheets each takes: from at most 60
 * sheets down to the first that takes one. For a blank property, one sheet at 1:1,000.
 */
export function suggestedScales(survey: Survey, project: Project, choice: PaperChoice): readonly ScaleChoice[] {
  const extent = propertyExtent(survey, project);
  if (extent === null) return [{ scaleDenominator: 1000, sheets: 1 }];
  const choices: ScaleChoice[] = [];
  for (const scaleDenominator of roundScales) {
    const [columns, rows] = sheetsToCover(extent, { ...choice, scaleDenominator });
    if (columns * rows <= mostSheets) choices.push({ scaleDenominator, sheets: columns * rows });
    if (columns * rows === 1) break;
  }
  return choices;
}

/** The largest round scale at which `extent` fits one sheet; null where even the smallest does not do. */
export function fittingScale(extent: Box, choice: PaperChoice): number | null {
  const fits = (scaleDenominator: number) => {
    const [columns, rows] = sheetsToCover(extent, { ...choice, scaleDenominator });
    return columns * rows === 1;
  };
  return roundScales.find(fits) ?? null;
}

/** "1:5,000". */
export function scaleText(scaleDenominator: number): string {
  return `1:${fixed(scaleDenominator, Number.isInteger(scaleDenominator) ? 0 : 1)}`;
}
