import type { FindOptions } from '../../core/api/findOptions.ts';
import { findFileName } from '../../core/sheets/fileName.ts';
import { digPages } from '../../core/sheets/find/digPages.ts';
import { stakeOutAt, stakeOutPages } from '../../core/sheets/find/stakeOutPages.ts';
import { numberPages } from '../../core/sheets/pageDraft.ts';
import { figures } from '../../core/words/figures.ts';
import type { Book, Printed } from './printJob.ts';
import { typefaces } from './typefaces.ts';

/**
 * How to find a crossing, or what is buried near a dig.
 * @throws SheetProblem (message and remedy for people) where the sheet cannot be made as asked.
 */
export function findBook({ project, property, survey }: Printed, options: FindOptions): Book {
  const f = figures(property.units);
  const input = { property, date: options.date, measure: typefaces().measure, f };
  const drafts =
    options.sheet === 'crossing'
      ? stakeOutPages(stakeOutAt(project, survey, options.gatewayId, f), survey, input)
      : digPages(project, survey, options.dig, input);
  const said = f.words.sheets.book;
  const title =
    options.sheet === 'crossing'
      ? (project.inGround.get(options.gatewayId)?.name ??
        said.crossing({ gateway: project.gateway.get(options.gatewayId)?.name ?? '' }))
      : said.dig;
  return {
    pages: numberPages(drafts, f),
    title,
    subjects: [said.findSubject, said.findInvented],
    fileName: findFileName(property.name, title, options.date),
    date: options.date,
  };
}
