import type { PrintJob } from '../../core/api/printJob.ts';
import type { MadeFile } from '../../core/api/projectApi.ts';
import type { Page } from '../../core/drawing/displayList.ts';
import { type Project, projectOf, propertyOf } from '../../core/model/project.ts';
import type { Property, Thing } from '../../core/model/things.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import type { Survey } from '../../core/survey/types.ts';
import { figures } from '../../core/words/figures.ts';
import { activeLanguage } from '../../core/words/language.ts';
import { setLocale, usualLocale } from '../../core/words/numbers/locale.ts';
import { findBook } from './findBook.ts';
import { orderBook } from './orderBook.ts';
import { packBook } from './packBook.ts';
import { type Attachment, renderPdf } from './renderPdf.ts';
import { sheetsBook } from './sheetsBook.ts';

/** Photos by the id of their bytes. */
export type Photos = ReadonlyMap<string, Uint8Array>;

/** The property that is printed. */
export interface Printed {
  readonly project: Project;
  readonly property: Property;
  readonly survey: Survey;
  readonly photos: Photos;
}

/** What becomes one PDF. */
export interface Book {
  readonly pages: readonly Page[];
  /** "order": said after the property's name. */
  readonly title: string;
  /** What it is, and what it is of an invented property. */
  readonly subjects: readonly [real: string, invented: string];
  readonly fileName: string;
  /** The day that is printed, ISO 8601. */
  readonly date: string;
  readonly attachment?: Attachment | null;
}

/**
 * Prints a job from everything in a file, as one PDF.
 * @throws SheetProblem (message and remedy for people) where it cannot be made as asked.
 */
export async function printJob(job: PrintJob, things: readonly Thing[], photos: Photos = new Map()): Promise<MadeFile> {
  // The pages are laid out before anything is waited for, so that each job has its own habits of figures.
  setLocale(job.options.locale ?? usualLocale);
  const project = projectOf(things);
  const property = propertyOf(project);
  const book = bookOf(job, { project, property, survey: surveyOf(project), photos });
  const { words } = figures(property.units);
  const bytes = await renderPdf(book.pages, {
    title: words.sheets.book.titled({ property: property.name, title: book.title }),
    subject: book.subjects[property.invented ? 1 : 0],
    language: activeLanguage().tag,
    madeAt: madeAt(book.date),
    ...(book.attachment ? { attachment: book.attachment } : {}),
  });
  return { fileName: book.fileName, mediaType: 'application/pdf', bytes };
}

function bookOf(job: PrintJob, printed: Printed): Book {
  switch (job.what) {
    case 'sheets':
      return sheetsBook(printed, job.options);
    case 'order':
      return orderBook(printed, job.options);
    case 'find':
      return findBook(printed, job.options);
    case 'pack':
      return packBook(printed, job.options);
  }
}

/** The day that was given, at noon where it has no time; the beginning of time for a date that is none. */
function madeAt(iso: string): Date {
  const at = new Date(/^\d{4}-\d{2}-\d{2}$/.test(iso) ? `${iso}T12:00:00Z` : iso);
  return Number.isNaN(at.getTime()) ? new Date(0) : at;
}
