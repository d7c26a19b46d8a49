import { allFindings } from '../../core/checks/allFindings.ts';
import { applyChanges } from '../../core/model/difference.ts';
import { type Project, projectOf } from '../../core/model/project.ts';
import { dividePlan } from '../../core/registers/dividePlan.ts';
import { fitReadings, readingRounds } from '../../core/registers/power/fitReadings.ts';
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
/** The window draws an edit first: on few processors the two would hinder each other. */
const gatherMs = 60;
/** The plan takes longest and nobody reads it while drawing: it is begun when no edit has come for this long. */
const restMs = 250;
let planSoon: ReturnType<typeof setTimeout> | null = null;
/** Last day of the round of readings that the leakage is fitted to; null: all readings; undefined: the newest round. */
let fitTo: string | null | undefined;

self.addEventListener('message', ({ data }: MessageEvent<ToBackroom>) => {
  if (data.type === 'fitRound') {
    fitTo = data.lastDay;
    if (!waiting) setTimeout(() => attempt(answerFit), 0);
    return;
  }
  if (data.type === 'reset') {
    project = projectOf(data.things);
    surveyed = null;
    fitTo = undefined;
  } else {
    project = applyChanges(project, data.changes);
  }
  revision = data.revision;
  if (planSoon !== null) clearTimeout(planSoon);
  planSoon = null;
  if (waiting) return;
  waiting = true;
  setTimeout(work, gatherMs);
});

function work(): void {
  waiting = false;
  if (!project.property.has('property')) return;
  attempt(() => {
    const survey = surveyOf(project, surveyed ?? undefined);
    surveyed = { project, survey };
    const findings = allFindings(project, survey).map((finding) => ({
      ...finding,
      fixes: finding.fixes.map(({ label }) => ({ label })),
    }));
    send({ type: 'findings', revision, findings });
    send({ type: 'power', revision, tables: powerTables(powerOf(project, survey)) });
    sendFit();
    send({ type: 'resting', revision });
    planSoon = setTimeout(() => attempt(sendPlan), restMs);
  });
}

function sendPlan(): void {
  planSoon = null;
  if (!surveyed) return;
  const progress = (fraction: number) => send({ type: 'progress', revision, fraction });
  progress(0);
  const plan = dividePlan(surveyed.project, surveyed.survey, { shouldStop: () => false, progress });
  send({ type: 'plan', revision, plan });
  send({ type: 'done', revision });
}

function answerFit(): void {
  sendFit();
  send({ type: planSoon === null ? 'done' : 'resting', revision });
}

function sendFit(): void {
  if (!surveyed) return;
  const power = powerOf(surveyed.project, surveyed.survey);
  const rounds = readingRounds(power);
  const newest = rounds[0] ?? null;
  const round = fitTo === null ? null : (rounds.find(({ lastDay }) => lastDay === fitTo) ?? newest);
  send({ type: 'fit', revision, fit: fitReadings(power, round) });
}

/** Does the work, or says why it could not be done. */
function attempt(work: () => void): void {
  try {
    work();
  } catch (error) {
    send({ type: 'failed', revision, message: error instanceof Error ? error.message : String(error) });
  }
}

function send(message: FromBackroom): void {
  self.postMessage(message);
}
