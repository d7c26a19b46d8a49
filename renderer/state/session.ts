import type {
  DesktopApi,
  Edit,
  FileState,
  Host,
  HostEvent,
  OpenProject,
  ProjectApi,
} from '../../core/api/projectApi.ts';
import type { Result } from '../../core/api/result.ts';
import type { WindowSettings } from '../../core/api/windowSettings.ts';
import { applyChanges, type Change, difference } from '../../core/model/difference.ts';
import { nameNewPaddocks } from '../../core/model/edits/nameNewPaddocks.ts';
import { EditRefused } from '../../core/model/edits/support/edit.ts';
import { allThings, type Project, projectOf } from '../../core/model/project.ts';
import { placesToName } from '../../core/survey/paddocks.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import type { Survey } from '../../core/survey/types.ts';
import { figures, plainWords } from '../../core/words/figures.ts';
import type { FirstCalls } from '../client/firstCalls.ts';
import { analysis } from '../work/analysis.ts';
import { type LastLine, type OpenFile, useApp } from './appState.ts';
import { asGroundSays } from './groundQuestion.ts';
import { newId } from './newId.ts';
import { oncePainted } from './oncePainted.ts';
import { report } from './report.ts';
import { figuresOf } from './useFigures.ts';

let project: ProjectApi;
let desktop: DesktopApi;

/** The host's calls, for what is not an edit (printing, listing folders). Only after `startSession`. */
export function host(): Host {
  return { project, desktop };
}

/** Shows what the host has open, by the user's settings, and listens to it from then on. */
export async function startSession(
  first: FirstCalls,
  showSettings: (kept: Result<WindowSettings>) => void,
): Promise<void> {
  ({ project, desktop } = await first.host);
  await enqueue(async () => {
    showSettings(await first.settings);
    const current = await first.current;
    if (!current.ok) report(current.problem);
    else if (current.value) show(current.value);
    // The welcome page lists them; over a file that is open nobody waits for them.
    else await refreshRecent();
    useApp.setState({ phase: 'ready' });
    if (current.ok && current.value) await refreshRecent();
  });
  first.hear((event) => void enqueue(() => hear(event)));
}

// --- one thing after another -------------------------------------------------------------------------------------

let last: Promise<unknown> = Promise.resolve();

/** Runs `work` when all that was asked for before it is done, so that each edit sees the one before. */
function enqueue<T>(work: () => Promise<T>): Promise<T> {
  const result = last.then(work);
  last = result.catch(() => undefined);
  return result;
}

// --- edits ------------------------------------------------------------------------------------------------------

export interface CommitOptions {
  /** Edits with the same key become one step of undo. */
  readonly mergeKey?: string;
  /** Ids to choose once the edit is in the file. */
  readonly choose?: readonly string[];
  /** It writes down what was measured, so that what is recorded may change. */
  readonly recording?: boolean;
  /** It takes things away: what is built is asked about first. */
  readonly deleting?: boolean;
  /** Writes the edit in place of the host's `apply`, together with what goes with it. */
  readonly write?: (edit: Edit) => Promise<Result<FileState>>;
}

/**
 * Makes an edit: in the file first, then on the screen. An edit that refuses says why on the last line of the inspector; one that
 * changes nothing is passed over. Resolves to whether the file changed.
 */
export function commit(
  label: string,
  edit: (project: Project) => Project,
  options: CommitOptions = {},
): Promise<boolean> {
  useApp.setState((state) => ({ saving: state.saving + 1 }));
  return enqueue(async () => {
    try {
      return await commitNow(label, edit, options);
    } catch (error) {
      if (!(error instanceof EditRefused)) throw error;
      useApp.setState({ lastLine: { kind: 'refused', text: refusalInWords(error) } });
      return false;
    } finally {
      useApp.setState((state) => ({ saving: state.saving - 1 }));
    }
  });
}

/** Why an edit was refused, in the units of the open property. */
function refusalInWords({ refusal }: EditRefused): string {
  const { file } = useApp.getState();
  return (file ? figuresOf(file.project) : figures('metric')).say(refusal.message);
}

async function commitNow(label: string, edit: (project: Project) => Project, options: CommitOptions): Promise<boolean> {
  const file = useApp.getState().file;
  if (!file) return false;
  const edited = await asGroundSays(file.project, edit(file.project), options);
  if (!edited) {
    useApp.setState({ lastLine: { kind: 'done', text: plainWords().window.frame.done.cancelled({ label }) } });
    return false;
  }
  const named = landStays(file, edited) ? null : withPaddocksNamed(file, edited);
  const after = named?.after ?? edited;
  const changes = difference(file.project, after);
  if (changes.length === 0) {
    if (options.choose) useApp.setState({ chosen: options.choose });
    return false;
  }
  const { mergeKey } = options;
  const baseRevision = file.state.revision;
  const write = options.write ?? project.apply;
  const writing = write({ baseRevision, label, changes, ...(mergeKey === undefined ? {} : { mergeKey }) });
  // Where it was not needed for names, the survey is made while the file is written.
  const survey = named?.survey ?? surveyOf(after, file);
  const result = await writing;
  if (!result.ok) {
    report(result.problem);
    if (result.problem.code === 'out-of-date') await reload();
    return false;
  }
  useApp.setState({
    file: { ...file, project: after, survey, state: result.value },
    lastLine: { kind: 'done', text: plainWords().window.frame.done.saved({ label }) },
    ...(options.choose ? { chosen: options.choose } : {}),
  });
  analysis.changed(changes, result.value.revision);
  return true;
}

/** Whether an edit leaves all paddocks as they are, each with its name. */
function landStays({ project: before, survey }: OpenFile, edited: Project): boolean {
  const untouched = (['fenceLine', 'paddock', 'property'] as const).every((kind) => edited[kind] === before[kind]);
  return untouched && survey.paddocks.every(({ named }) => named !== null);
}

/** The edited project with a name for each paddock that has come into being, and its survey. */
function withPaddocksNamed(file: OpenFile, edited: Project): { after: Project; survey: Survey } {
  const survey = surveyOf(edited, file);
  const after = nameNewPaddocks(placesToName(survey.paddocks, survey.plane), newId)(edited);
  return after === edited ? { after, survey } : { after, survey: surveyOf(after, { project: edited, survey }) };
}

export function undo(): Promise<void> {
  return replay('undo');
}

export function redo(): Promise<void> {
  return replay('redo');
}

function replay(which: 'undo' | 'redo'): Promise<void> {
  return enqueue(async () => {
    const result = await project[which]();
    if (!result.ok) return report(result.problem);
    if (result.value === null) return;
    const { changes, state, label } = result.value;
    take(changes, state);
    const { undone, redone } = plainWords().window.frame.commands;
    const text = which === 'undo' ? undone({ label }) : redone({ label });
    useApp.setState({ lastLine: { kind: 'done', text } });
  });
}

/** Puts changes that are already in the file on the screen. */
function take(changes: readonly Change[], state: OpenFile['state']): void {
  const file = useApp.getState().file;
  if (!file) return;
  const after = applyChanges(file.project, changes);
  const survey = surveyOf(after, file);
  const gone = new Set(changes.filter((change) => change.after === null).map((change) => change.id));
  useApp.setState(({ chosen }) => ({
    file: { ...file, project: after, survey, state },
    chosen: chosen.some((id) => gone.has(id)) ? chosen.filter((id) => !gone.has(id)) : chosen,
  }));
  analysis.changed(changes, state.revision);
}

async function hear(event: HostEvent): Promise<void> {
  if (event.type === 'problem') return report(event.problem);
  if (event.type === 'opened') {
    if (event.path !== (useApp.getState().file?.path ?? null)) await reload({ keepPage: false });
    return;
  }
  const file = useApp.getState().file;
  if (!file || event.state.revision <= file.state.revision) return;
  if (event.state.revision === file.state.revision + 1) take(event.changes, event.state);
  else await reload();
}

// --- files ------------------------------------------------------------------------------------------------------

export function createFile(path: string, name: string): Promise<boolean> {
  return openWith(() => project.create({ path, name }));
}

export function openFile(path: string): Promise<boolean> {
  return openWith(() => project.open({ path }));
}

export function openDemo(): Promise<boolean> {
  return openWith(() => project.openDemo());
}

export async function saveCopy(path: string, replace: boolean): Promise<boolean> {
  const done = await openWith(() => project.saveAs({ path, replace }), { keepPage: true });
  if (done) useApp.setState({ lastLine: { kind: 'done', text: plainWords().window.frame.done.copied } });
  return done;
}

export function closeFile(): Promise<void> {
  return enqueue(async () => {
    const result = await project.close();
    if (!result.ok) return report(result.problem);
    show(null);
    await refreshRecent();
  });
}

function openWith(call: () => Promise<Result<OpenProject>>, { keepPage = false } = {}): Promise<boolean> {
  return enqueue(async () => {
    const result = await call();
    if (!result.ok) {
      report(result.problem);
      return false;
    }
    show(result.value, keepPage);
    await refreshRecent();
    return true;
  });
}

async function reload({ keepPage = true } = {}): Promise<void> {
  const current = await project.current();
  if (current.ok) show(current.value, keepPage);
  else report(current.problem);
}

function holdsUnknown(): LastLine {
  return { kind: 'done', text: plainWords().window.frame.done.holdsUnknown };
}

function show(opened: OpenProject | null, keepPage = false): void {
  if (!opened) {
    analysis.reset([], 0);
    useApp.setState({
      file: null,
      page: 'cover',
      chosen: [],
      pointed: null,
      lit: [],
      analysis: null,
      lastLine: null,
      shownOpen: null,
    });
    return;
  }
  const made = projectOf(opened.things);
  const file: OpenFile = {
    path: opened.path,
    fileName: opened.fileName,
    project: made,
    survey: surveyOf(made),
    state: opened.state,
  };
  useApp.setState({
    file,
    analysis: null,
    shownOpen: null,
    problem: null,
    pointed: null,
    lit: [],
    ...(keepPage ? {} : { page: 'draw' as const, chosen: [], lastLine: opened.holdsUnknown ? holdsUnknown() : null }),
  });
  oncePainted(analyse);
}

/** The worker takes a core and a copy of everything. An edit may have started it in between. */
function analyse(): void {
  const { file, analysis: begun } = useApp.getState();
  if (file && !begun) analysis.reset([...allThings(file.project)], file.state.revision);
}

async function refreshRecent(): Promise<void> {
  const recent = await project.recent();
  if (recent.ok) useApp.setState({ recent: recent.value });
}
