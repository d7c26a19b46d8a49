import type { PrintJob } from '../../core/api/printJob.ts';
import type { MadeFile } from '../../core/api/projectApi.ts';
import { fail, type Result } from '../../core/api/result.ts';
import { plainWords } from '../../core/words/figures.ts';
import { activeLocale } from '../../core/words/numbers/locale.ts';
import { download } from './download.ts';
import { faultText } from './report.ts';
import { host } from './session.ts';

/** Has the PDF of a job made from the file as it stands, by this window's habits of figures, and hands it to the user. Never throws. */
export async function makePdf(job: PrintJob): Promise<Result<MadeFile>> {
  try {
    const made = await host().project.print({
      ...job,
      options: { ...job.options, locale: activeLocale() },
    } as PrintJob);
    if (made.ok) download(made.value);
    return made;
  } catch (error) {
    const { done } = plainWords().window.frame;
    return fail('failed', done.pdfNotMade({ why: faultText(error) }), done.pdfNotMadeRemedy);
  }
}
