import type { MadeFile } from '../../core/api/projectApi.ts';
import type { SheetOptions } from '../../core/api/sheetOptions.ts';
import { projectOf, propertyOf } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { sheetFileName } from '../../core/sheets/fileName.ts';
import { layoutSheets } from '../../core/sheets/layoutSheets.ts';
import { scaleText } from '../../core/sheets/scales.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { testSheets } from '../../core/survey/testSheets.ts';
import { madeAt } from './madeAt.ts';
import { renderPdf } from './renderPdf.ts';
import { typefaces } from './typefaces.ts';

/**
 * The map sheets of a property with the registers that were asked for, as one PDF.
 * @throws SheetProblem (message and remedy for people) where the sheets cannot be made as asked.
 */
export async function printSheets(things: readonly Thing[], options: SheetOptions): Promise<MadeFile> {
  const project = projectOf(things);
  const property = propertyOf(project);
  const survey = surveyOf(project);
  const sheets = options.withTestSheets ? testSheets(project, survey) : [];
  const pages = layoutSheets({ project, survey, testSheets: sheets, options, measure: typefaces().measure });
  const bytes = await renderPdf(pages, {
    title: `${property.name}: fence network, map sheets at ${scaleText(options.scaleDenominator)}`,
    subject: property.invented ? 'Fence network of an invented example' : 'Fence network',
    language: 'en',
    madeAt: madeAt(options.date),
  });
  return {
    fileName: sheetFileName(property.name, options.scaleDenominator, options.date),
    mediaType: 'application/pdf',
    bytes,
  };
}
