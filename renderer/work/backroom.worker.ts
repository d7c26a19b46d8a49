import { allFindings } from '../../core/checks/allFindings.ts';
import { applyChanges } from '../../core/model/difference.ts';
import { type Project, projectOf } from '../../core/model/project.ts';
import { dividePlan } from '../../core/registers/dividePlan.ts';
import { fitReadings, readingDays } from '../../core/registers/power/fitReadings.ts';
import { powerOf } from '../../core/registers/power/powerOf.ts';
import { powerTables } from '../../core/registers/power/powerTables.ts';
import { surveyOf } from '../../core/registers/survey.ts';
import type { Survey } from '../../core/registers/types.ts';
import type { FromBackroom, ToBackroom } from './messages.ts';

/**
 * The back room: works out what takes long (checks, the division, effects on the voltage, the leakage fitted to
 * readings) beside the window. It gathers the edits that have come in, then answers for the newest state only.
 */
let project: Project = projectOf([]);
let surveyed: { readonly project: Project; readonly survey: Survey } | null = null;
let revision = 0;
let waiting = false;
/** Of which day's readings the leakage is fitted; undefined: of the newest. */
let fitDay: string | null | undefined;

self.addEventListener('message', ({ data }: MessageEvent<ToBackroom>) => {
  if (data.type === 'fitDay') {
    fitDay = data.day;
    if (!waiting) setTimeout(() => answer(sendFit), 0);
    return;
  }
  if (data.type === 'reset') {
    project = projectOf(data.things);
    surveyed = null;
    fitDay = undefined;
  } else {
    project = applyChanges(project, data.changes);
  }
  revision = data.revision;
  if (waiting) return;
  waiting = true;
  setTimeout(work, 0);
});

function work(): void {
  waiting = false;
  if (!project.property.has('property')) return;
  answer(() => {
    const survey = surveyOf(project, surveyed ?? undefined);
    surveyed = { project, survey };
    const findings = allFindings(project, survey).map((finding) => ({
      ...finding,
      fixes: finding.fixes.map(({ label }) => ({ label })),
    }));
    send({ type: 'findings', revision, findings });
    const plan = dividePlan(project, survey, {
      shouldStop: () => false,
      progress: (fraction) => send({ type: 'progress', revision, fraction }),
    });
    send({ type: 'plan', revision, plan });
    send({ type: 'power', revision, tables: powerTables(powerOf(project, survey)) });
    sendFit();
  });
}

function sendFit(): void {
  if (!surveyed) return;
  const power = powerOf(surveyed.project, surveyed.survey);
  const days = readingDays(power);
  const day = fitDay === null || (fitDay !== undefined && days.includes(fitDay)) ? fitDay : (days[0] ?? null);
  send({ type: 'fit', revision, fit: fitReadings(power, day) });
}

/** Does the work and says that it is done, or why it could not be. */
function answer(work: () => void): void {
  try {
    work();
    send({ type: 'done', revision });
  } catch (error) {
    send({ type: 'failed', revision, message: error instanceof Error ? error.message : String(error) });
  }
}

function send(message: FromBackroom): void {
  self.postMessage(message);
}
