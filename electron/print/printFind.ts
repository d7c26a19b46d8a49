import type { FindOptions } from '../../core/api/findOptions.ts';
import type { MadeFile } from '../../core/api/projectApi.ts';
import { projectOf, propertyOf } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { findFileName } from '../../core/sheets/fileName.ts';
import { digPages } from '../../core/sheets/find/digPages.ts';
import { stakeOutAt, stakeOutPages } from '../../core/sheets/find/stakeOutPages.ts';
import { numberPages } from '../../core/sheets/pageDraft.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { madeAt } from './madeAt.ts';
import { renderPdf } from './renderPdf.ts';
import { typefaces } from './typefaces.ts';

/**
 * How to find a crossing, or what is buried near a dig, as a PDF.
 * @throws SheetProblem (message and remedy for people) where the sheet cannot be made as asked.
 */
export async function printFind(things: readonly Thing[], options: FindOptions): Promise<MadeFile> {
  const project = projectOf(things);
  const property = propertyOf(project);
  const survey = surveyOf(project);
  const input = { property, date: options.date, measure: typefaces().measure };
  const drafts =
    options.sheet === 'crossing'
      ? stakeOutPages(stakeOutAt(project, survey, options.gatewayId), survey, input)
      : digPages(project, survey, options.dig, input);
  const about =
    options.sheet === 'crossing'
      ? (project.inGround.get(options.gatewayId)?.name ??
        `crossing at ${project.gateway.get(options.gatewayId)?.name ?? ''}`)
      : 'dig sheet';
  const bytes = await renderPdf(numberPages(drafts), {
    title: `${property.name}: ${about}`,
    subject: property.invented ? 'To find what is buried; an invented example' : 'To find what is buried',
    language: 'en',
    madeAt: madeAt(options.date),
  });
  return { fileName: findFileName(property.name, about, options.date), mediaType: 'application/pdf', bytes };
}
