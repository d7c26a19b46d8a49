import { findingsSteps } from '../../core/checks/allFindings.ts';
import { applyChanges } from '../../core/model/difference.ts';
import { leastOf } from '../../core/model/extremes.ts';
import { type Project, projectOf } from '../../core/model/project.ts';
import type { Steps } from '../../core/model/steps.ts';
import { startDividePlan } from '../../core/survey/dividePlan.ts';
import { fitReadingsSteps, readingRounds } from '../../core/survey/power/fitReadings.ts';
import { powerOf } from '../../core/survey/power/powerOf.ts';
import { powerTablesSteps } from '../../core/survey/power/powerTables.ts';
import { type Surveyed, surveyOf } from '../../core/survey/survey.ts';
import type { AnalysisPart, FromAnalysis, Shown, ToAnalysis } from './analysisMessages.ts';

/** Edits are gathered until none has come for this long, at most so long: on few processors the work would hinder them. */
export const gatherMs = 250;
export const mostGatherMs = 1500;
/** After the last edit, what is on the screen is worked out again this soon; */
export const soonMs = 500;
/** and what nobody reads when the user rests. */
export const restMs = 4000;
/** How long the worker goes on before it listens again. */
const sliceMs = 15;
/** Better plans are sent no sooner after one another; the first one this long after it was begun, where it isn't the last. */
const betweenPlansMs = 400;
const firstPlanMs = 150;

/** Time, as the room knows it. */
export interface RoomTime {
  now(): number;
  /** Calls back when what has come in meanwhile was heard. */
  listen(then: () => void): void;
  /** Calls back after a while. The answer forgets it. */
  later(ms: number, then: () => void): () => void;
}

interface Task {
  readonly steps: Steps<void>;
  done: boolean;
}

/**
 * Works out beside the window what takes long: the checks, the division, effects on the voltage, the leakage fitted to
 * readings. It keeps its own copy of the project, and works in slices between which it hears of the next edit: then
 * what was begun for the state before is dropped. Findings come first and soon; the rest at once where it is on the
 * screen, else when the user rests.
 */
export class AnalysisRoom {
  readonly #send: (message: FromAnalysis) => void;
  readonly #time: RoomTime;
  #project: Project = projectOf([]);
  #surveyed: Surveyed | null = null;
  #revision = 0;
  #shown: Shown = null;
  /** Last day of the round of readings that the leakage is fitted to; null: all readings; undefined: the newest round. */
  #fitTo: string | null | undefined;
  #tasks = new Map<AnalysisPart, Task>();
  #planStopped = false;
  #sendPlan: (() => void) | null = null;
  #settled = true;
  /** When the first edit came that has no findings yet, and the last. */
  #firstAt: number | null = null;
  #lastAt = Number.NEGATIVE_INFINITY;
  #working = false;
  #forget: () => void = () => {};

  constructor(send: (message: FromAnalysis) => void, time: RoomTime) {
    this.#send = send;
    this.#time = time;
  }

  hear(message: ToAnalysis): void {
    try {
      this.#take(message);
    } catch (error) {
      this.#tasks.clear();
      this.#settled = true;
      this.#send({ type: 'failed', part: null, revision: this.#revision, message: inWords(error) });
      return;
    }
    this.#goOn();
  }

  #take(message: ToAnalysis): void {
    switch (message.type) {
      case 'reset':
        this.#revision = message.revision;
        this.#project = projectOf(message.things);
        this.#surveyed = null;
        this.#fitTo = undefined;
        // Nobody is drawing: findings, and what is on the screen, at once.
        this.#lastAt = this.#time.now() - soonMs;
        this.#firstAt = null;
        this.#begin();
        break;
      case 'changed':
        this.#revision = message.revision;
        this.#lastAt = this.#time.now();
        this.#firstAt ??= this.#lastAt;
        this.#begin();
        this.#project = applyChanges(this.#project, message.changes);
        break;
      case 'shown':
        this.#shown = message.shown;
        break;
      case 'fitRound':
        this.#fitTo = message.lastDay;
        this.#tasks.delete('fit');
        this.#settled = false;
        break;
      case 'stopPlan':
        this.#planStopped = true;
        this.#sendPlan?.();
        this.#send({ type: 'planning', revision: this.#revision, fraction: null });
        break;
      case 'goOnPlan':
        this.#planStopped = false;
        this.#settled = false;
        break;
    }
  }

  /** Another state of the drawing: what was begun for the one before is dropped. */
  #begin(): void {
    this.#tasks.clear();
    this.#planStopped = false;
    this.#sendPlan = null;
    this.#settled = false;
  }

  #goOn(): void {
    this.#forget();
    this.#forget = () => {};
    if (this.#working || this.#settled) return;
    const now = this.#time.now();
    const open = this.#order().filter((part) => this.#isOpen(part));
    if (open.length === 0) {
      this.#settled = true;
      this.#send({ type: 'settled', revision: this.#revision });
      return;
    }
    const part = open.find((each) => this.#dueAt(each) <= now);
    if (part) {
      this.#working = true;
      this.#slice(part);
      this.#time.listen(() => {
        this.#working = false;
        this.#goOn();
      });
    } else {
      const soonest = leastOf(open.map((each) => this.#dueAt(each)));
      this.#forget = this.#time.later(soonest - now, () => this.#goOn());
    }
  }

  #order(): AnalysisPart[] {
    if (this.#shown === 'power') return ['findings', 'power', 'fit', 'plan'];
    return this.#shown === 'plan' ? ['findings', 'plan', 'power', 'fit'] : ['findings', 'power', 'plan', 'fit'];
  }

  #isOpen(part: AnalysisPart): boolean {
    if (!this.#project.property.has('property')) return false;
    if (part === 'plan' && this.#planStopped) return false;
    return this.#tasks.get(part)?.done !== true;
  }

  #dueAt(part: AnalysisPart): number {
    if (part === 'findings') return Math.min(this.#lastAt + gatherMs, (this.#firstAt ?? Infinity) + mostGatherMs);
    const isRead = this.#shown === (part === 'plan' ? 'plan' : 'power');
    return this.#lastAt + (isRead ? soonMs : restMs);
  }

  #slice(part: AnalysisPart): void {
    const until = this.#time.now() + sliceMs;
    const task = this.#tasks.get(part) ?? { steps: this.#start(part), done: false };
    this.#tasks.set(part, task);
    try {
      do {
        task.done = task.steps.next().done === true;
      } while (!task.done && this.#time.now() < until);
    } catch (error) {
      task.done = true;
      this.#send({ type: 'failed', part, revision: this.#revision, message: inWords(error) });
    }
  }

  #start(part: AnalysisPart): Steps<void> {
    if (part === 'findings') return this.#findings();
    if (part === 'power') return this.#power();
    return part === 'fit' ? this.#fit() : this.#plan();
  }

  *#findings(): Steps<void> {
    const { survey } = this.#survey();
    yield;
    const findings = yield* findingsSteps(this.#project, survey);
    this.#firstAt = null;
    this.#send({
      type: 'findings',
      revision: this.#revision,
      findings: findings.map((finding) => ({ ...finding, fixes: finding.fixes.map(({ label }) => ({ label })) })),
    });
  }

  *#power(): Steps<void> {
    const power = powerOf(this.#project, this.#survey().survey);
    yield;
    const tables = yield* powerTablesSteps(power);
    this.#send({ type: 'power', revision: this.#revision, tables });
  }

  *#fit(): Steps<void> {
    const power = powerOf(this.#project, this.#survey().survey);
    yield;
    const rounds = readingRounds(power);
    const newest = rounds[0] ?? null;
    const round = this.#fitTo === null ? null : (rounds.find(({ lastDay }) => lastDay === this.#fitTo) ?? newest);
    const fit = yield* fitReadingsSteps(power, round);
    this.#send({ type: 'fit', revision: this.#revision, fit });
  }

  *#plan(): Steps<void> {
    const revision = this.#revision;
    const tell = (fraction: number | null): void => this.#send({ type: 'planning', revision, fraction });
    tell(0);
    const started = yield* startDividePlan(this.#project, this.#survey().survey);
    if (!started) {
      this.#send({ type: 'plan', revision, plan: null });
      tell(null);
      return;
    }
    const { planning } = started;
    let sent = 0;
    const send = (): void => {
      if (planning.answers === sent) return;
      sent = planning.answers;
      this.#send({ type: 'plan', revision, plan: started.plan() });
    };
    this.#sendPlan = send;
    let told = this.#time.now() + firstPlanMs - betweenPlansMs;
    while (planning.step()) {
      // Plans on the way are only for who looks on.
      if (this.#shown === 'plan' && this.#time.now() - told >= betweenPlansMs) {
        told = this.#time.now();
        send();
        tell(planning.progress);
      }
      yield;
    }
    send();
    this.#sendPlan = null;
    tell(null);
  }

  #survey(): Surveyed {
    if (this.#surveyed?.project !== this.#project) {
      this.#surveyed = { project: this.#project, survey: surveyOf(this.#project, this.#surveyed ?? undefined) };
    }
    return this.#surveyed;
  }
}

function inWords(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
