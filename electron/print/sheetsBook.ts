import type { SheetOptions } from '../../core/api/sheetOptions.ts';
import { sheetFileName } from '../../core/sheets/fileName.ts';
import { layoutSheets } from '../../core/sheets/layoutSheets.ts';
import { scaleText } from '../../core/sheets/scales.ts';
import { testSheets } from '../../core/survey/testSheets.ts';
import { figures } from '../../core/words/figures.ts';
import type { Book, Printed } from './printJob.ts';
import { typefaces } from './typefaces.ts';

/**
 * The map sheets of a property with the registers that were asked for.
 * @throws SheetProblem (message and remedy for people) where the sheets cannot be made as asked.
 */
export function sheetsBook({ project, property, survey }: Printed, options: SheetOptions): Book {
  const sheets = options.withTestSheets ? testSheets(project, survey) : [];
  return {
    pages: layoutSheets({
      project,
      survey,
      testSheets: sheets,
      options,
      f: figures(property.units),
      measure: typefaces().measure,
    }),
    title: `fence network, map sheets at ${scaleText(options.scaleDenominator)}`,
    subjects: ['Fence network', 'Fence network of an invented example'],
    fileName: sheetFileName(property.name, options.scaleDenominator, options.date),
    date: options.date,
  };
}
