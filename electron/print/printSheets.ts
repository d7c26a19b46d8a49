import type { MadeFile } from '../../core/api/projectApi.ts';
import type { SheetOptions } from '../../core/api/sheetOptions.ts';
import { projectOf, propertyOf } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { surveyOf } from '../../core/registers/survey.ts';
import { testSheets } from '../../core/registers/testSheets.ts';
import { sheetFileName } from '../../core/sheets/fileName.ts';
import { layoutSheets } from '../../core/sheets/layoutSheets.ts';
import { scaleText } from '../../core/sheets/scales.ts';
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

/** The day that was given, at noon where it has no time; the beginning of time for a date that is none. */
function madeAt(iso: string): Date {
  const at = new Date(/^\d{4}-\d{2}-\d{2}$/.test(iso) ? `${iso}T12:00:00Z` : iso);
  return Number.isNaN(at.getTime()) ? new Date(0) : at;
}
