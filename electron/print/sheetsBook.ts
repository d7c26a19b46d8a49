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
  const f = figures(property.units);
  const said = f.words.sheets.book;
  const sheets = options.withTestSheets ? testSheets(project, survey) : [];
  return {
    pages: layoutSheets({
      project,
      survey,
      testSheets: sheets,
      options,
      f,
      measure: typefaces().measure,
    }),
    title: said.sheets({ scale: scaleText(options.scaleDenominator) }),
    subjects: [said.sheetsSubject, said.sheetsInvented],
    fileName: sheetFileName(property.name, options.scaleDenominator, options.date),
    date: options.date,
  };
}
