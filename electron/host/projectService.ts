import { existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname, isAbsolute, join, normalize } from 'node:path';
import type { CallsOf } from '../../core/api/calls.ts';
import type { PrintJob } from '../../core/api/printJob.ts';
import type { FileState, HostEvent, MadeFile, OpenProject, ProjectApi, Replay } from '../../core/api/projectApi.ts';
import { fail, type Problem, type Result, succeed } from '../../core/api/result.ts';
import { newProperty, startingFenceTypes } from '../../core/model/defaults.ts';
import type { Change } from '../../core/model/difference.ts';
import type { Thing } from '../../core/model/things.ts';
import { SheetProblem } from '../../core/sheets/sheetProblem.ts';
import { plainWords } from '../../core/words/figures.ts';
import { languageOf, setLanguage } from '../../core/words/language.ts';
import type { Printer } from '../print/printRoom.ts';
import { fileEnding, nameOfFile, withEnding } from '../store/fileFormat.ts';
import type { Trouble } from '../store/heldFile.ts';
import { assertNotInUse, freeName } from '../store/openDatabase.ts';
import {
  keptBeside,
  movedMeanwhile,
  notKept,
  overwrittenMeanwhile,
  ProblemError,
  problemOf,
  savedFromMemory,
} from '../store/problems.ts';
import { createProjectFile, openProjectFile } from '../store/projectFile.ts';
import type { ProjectStore } from '../store/projectStore.ts';
import { type Lost, lostInWords } from '../store/salvage.ts';
import { readDemo } from './demo.ts';
import { makeGeoPackage } from './geopackage.ts';
import { listFolder } from './listFolder.ts';
import { Pictures } from './pictures.ts';
import { RecentFiles } from './recentFiles.ts';
import { registersOf } from './registers.ts';
import { keepSettings, readSettings, settingsPath } from './settingsFile.ts';
import { TileFiles, type TilePatience } from './tileFiles.ts';
import type { UserFolders } from './userFolders.ts';

export interface ServiceOptions {
  readonly folders: UserFolders;
  /** The JSON file with the things of the demo property. */
  readonly demoFile: string;
  readonly print: Printer;
  /** Written into new files: "Undergate 0.1.0". */
  readonly madeWith: string;
  /** How long tile files are waited for, where it is not as usual. */
  readonly tilePatience?: TilePatience;
}

/** So often the host looks whether others have moved the open file or written into it. */
const lookEveryMs = 2000;

/**
 * The one open file of a host and all windows that look at it. The store is synchronous, so each call that
 * writes runs to its end before the next one begins, whichever windows they come from.
 */
export class ProjectService {
  readonly #options: ServiceOptions;
  readonly #recent: RecentFiles;
  readonly #settingsPath: string;
  readonly #listeners = new Map<(event: HostEvent) => void, string>();
  readonly #pictures = new Pictures();
  readonly #tileFiles: TileFiles;
  readonly #looking = setInterval(() => this.#lookAfterFile(), lookEveryMs).unref();
  #store: ProjectStore | null = null;
  /** What the windows were told is wrong with the open file. */
  #told: Trouble | null = null;
  /** What is open here and no longer in its file is in a copy. */
  #isKept = false;
  /** Such a copy was tried to be made as soon as it was seen to be wanted. */
  #hasTriedToKeep = false;
  /** Of such a copy, what the windows are still to be told. */
  #untold: ProblemError | null = null;

  constructor(options: ServiceOptions) {
    this.#options = options;
    this.#recent = new RecentFiles(join(options.folders.config, 'recent.json'));
    this.#settingsPath = settingsPath(options.folders);
    setLanguage(languageOf(readSettings(this.#settingsPath).language));
    this.#tileFiles = new TileFiles(join(options.folders.config, 'map-files.json'), options.tilePatience);
  }

  /** The service as one window sees it: it hears of what the others do, not of its own doings. */
  forWindow(windowId: string): ProjectApi {
    return {
      current: () => this.#answer(() => this.#store && this.#whole(this.#store)),
      create: ({ path, name }) => this.#answer(() => this.#create(projectPath(path), name, windowId), path),
      open: ({ path }) => this.#answer(() => this.#open(absolutePath(path), windowId), path),
      openDemo: () => this.#answer(() => this.#openDemo(windowId), this.#options.folders.projects),
      close: () => this.#answer(() => this.#close(windowId)),
      saveAs: ({ path, replace }) => this.#answer(() => this.#saveAs(projectPath(path), replace, windowId), path),
      recent: () => this.#answer(() => this.#recent.list()),
      windowSettings: () => this.#answer(() => readSettings(this.#settingsPath)),
      keepWindowSettings: (settings) => this.#answer(() => keepSettings(this.#settingsPath, settings)),
      listFolder: ({ path }) => this.#answer(() => this.#listFolder(path), path ?? this.#options.folders.projects),
      apply: (edit) =>
        this.#answer(() => {
          const state = this.#openStore().apply(edit);
          if (edit.changes.length > 0) this.#tellChanged(windowId, edit.changes, state);
          return state;
        }),
      undo: () => this.#answer(() => this.#replay(windowId, this.#openStore().undo())),
      redo: () => this.#answer(() => this.#replay(windowId, this.#openStore().redo())),
      print: (job) => this.#print(job),
      makeGeoPackage: () =>
        this.#answer(() => {
          const store = this.#openStore();
          return makeGeoPackage(store.things(), nameOfFile(store.path), new Date());
        }),
      addPhotos: ({ photos, edit }) =>
        this.#answer(() => {
          const state = this.#openStore().applyWithPhotos(edit, photos);
          this.#tellChanged(windowId, edit.changes, state);
          return state;
        }),
      photoBytes: ({ blobIds }) => this.#answer(() => blobIds.map((id) => this.#openStore().photoBytes(id))),
      ...this.#pictureCalls(windowId),
      subscribe: (listener) => {
        this.#listeners.set(listener, windowId);
        return () => this.#listeners.delete(listener);
      },
    };
  }

  #pictureCalls(windowId: string) {
    const pictures = this.#pictures;
    return {
      beginPicture: (request) => this.#answer(() => pictures.begin(this.#openStore(), request)),
      addPictureTiles: ({ imageId, tiles }) => this.#answer(() => pictures.add(imageId, tiles)),
      finishPicture: ({ imageId, edit }) =>
        this.#answer(() => {
          const state = pictures.finish(this.#openStore(), imageId, edit);
          this.#tellChanged(windowId, edit.changes, state);
          return state;
        }),
      dropPicture: ({ imageId }) => this.#answer(() => pictures.drop(imageId)),
      pictureTile: (key) => this.#answer(() => this.#openStore().imageTile(key)),
      openTileFile: ({ path, chosen }) =>
        this.#answer(() => this.#tileFiles.open(path, chosen, this.#store?.path ?? null), path),
      tileFileTile: (request) =>
        this.#answer(() => this.#tileFiles.tile(request, this.#store?.path ?? null), request.path),
    } satisfies Partial<CallsOf<'project'>>;
  }

  /**
   * Lets go of the open file, as the last thing before the host ends. Answers what is to be told then: that what was open is
   * kept elsewhere, or could not be kept.
   */
  dispose(): Problem | null {
    clearInterval(this.#looking);
    this.#listeners.clear();
    try {
      this.#letGo();
      return this.#untold?.problem ?? null;
    } catch (error) {
      this.#store?.close();
      return problemOf(error, plainWords().host.files.what.file);
    } finally {
      this.#tileFiles.close();
    }
  }

  #create(path: string, name: string, windowId: string): OpenProject {
    return this.#createFrom(path, [newProperty(name), ...startingFenceTypes()], windowId);
  }

  #createFrom(path: string, things: readonly Thing[], windowId: string): OpenProject {
    assertFolder(dirname(path));
    createProjectFile(path, things, this.#options.madeWith);
    return this.#open(path, windowId);
  }

  #open(path: string, windowId: string): OpenProject {
    const current = this.#store;
    const trouble = current?.trouble() ?? null;
    if (current?.isAt(path) && !trouble) return this.#whole(current);
    this.#keepWhatIsOnlyHere();
    try {
      // One that was only moved is still held, and can't be opened a second time.
      if (trouble === 'moved' && current?.isAt(path)) this.#letGo();
      const { store, things } = openProjectFile(path);
      this.#take(store);
      this.#recent.add(path, new Date().toISOString());
      this.#tell(windowId, { type: 'opened', path });
      return openProject(store, things);
    } finally {
      this.#tellUntold();
    }
  }

  /** Goes on in another file. */
  #take(store: ProjectStore): void {
    try {
      this.#letGo();
    } catch (error) {
      store.close();
      throw error;
    }
    this.#store = store;
  }

  #openDemo(windowId: string): OpenProject {
    const things = readDemo(this.#options.demoFile);
    const folder = this.#projectFolder();
    let path = join(folder, `Demo property${fileEnding}`);
    for (let count = 2; existsSync(path); count++) path = join(folder, `Demo property ${count}${fileEnding}`);
    return this.#createFrom(path, things, windowId);
  }

  #close(windowId: string): null {
    if (this.#store) {
      this.#letGo();
      this.#tell(windowId, { type: 'opened', path: null });
      this.#tellUntold();
    }
    return null;
  }

  #saveAs(path: string, replace: boolean, windowId: string): OpenProject {
    const store = this.#openStore();
    assertFolder(dirname(path));
    if (store.isAt(path)) {
      if (store.isOnlyHere()) throw overwrittenMeanwhile(path, null);
      return this.#open(path, windowId);
    }
    if (replace) assertNotInUse(path);
    refreshRegisters(store);
    const lost = store.copyTo(path, replace, registersOf);
    this.#isKept = store.isOnlyHere();
    const opened = this.#open(path, windowId);
    if (lost) this.#tellProblem(savedFromMemory(path, lostInWords(lost)));
    return opened;
  }

  /** Closes the open file, its registers up to date. */
  #letGo(): void {
    if (!this.#store) return;
    this.#pictures.dropComing();
    this.#tileFiles.close();
    refreshRegisters(this.#store);
    this.#keepWhatIsOnlyHere();
    this.#store.close();
    this.#store = null;
    this.#told = null;
    this.#isKept = false;
    this.#hasTriedToKeep = false;
  }

  /** Makes a copy of what is open where no file holds it any more, beside where it was. */
  #keepWhatIsOnlyHere(): void {
    const store = this.#store;
    if (!store?.isOnlyHere() || this.#isKept) return;
    const folders = [() => dirname(store.path), () => this.#projectFolder()];
    const { copyPath, lost } = keepACopy(store, folders);
    this.#isKept = true;
    this.#untold = keptBeside(store.path, copyPath, lost && lostInWords(lost));
  }

  /** Not only when the file is left: until then what is open would be in this process's memory alone. */
  #keepAtOnce(store: ProjectStore): void {
    if (this.#hasTriedToKeep || !store.isGone()) return;
    this.#hasTriedToKeep = true;
    try {
      this.#keepWhatIsOnlyHere();
    } catch {
      // It is tried again, and told, when the file is left.
    }
  }

  /** Tells all windows of the copy that was made last: once they know which file is open now. */
  #tellUntold(): void {
    if (this.#untold) this.#tellProblem(this.#untold);
    this.#untold = null;
  }

  /** Tells the windows when others have moved the open file or written into it: not only at the next edit. */
  #lookAfterFile(): void {
    const store = this.#store;
    if (!store) return;
    try {
      const trouble = store.trouble();
      if (trouble) this.#keepAtOnce(store);
      if (trouble && trouble !== this.#told) {
        const words = trouble === 'moved' ? movedMeanwhile : overwrittenMeanwhile;
        this.#tellProblem(words(store.path, this.#untold?.problem.remedy ?? null));
      }
      this.#told = trouble;
    } catch {
      // It can't be looked at just now (a drive that sleeps): the next edit says what is wrong.
    }
  }

  #listFolder(path: string | null) {
    try {
      return listFolder(path === null ? this.#projectFolder() : absolutePath(path));
    } catch (error) {
      if (error instanceof Error && 'code' in error && (error.code === 'EACCES' || error.code === 'EPERM')) {
        const { message, remedy } = plainWords().host.files.noRight;
        throw new ProblemError('failed', message({ path: path ?? this.#options.folders.projects }), remedy);
      }
      throw error;
    }
  }

  #projectFolder(): string {
    mkdirSync(this.#options.folders.projects, { recursive: true });
    return this.#options.folders.projects;
  }

  #replay(windowId: string, replay: Replay | null): Replay | null {
    if (replay) this.#tellChanged(windowId, replay.changes, replay.state);
    return replay;
  }

  async #print(job: PrintJob): Promise<Result<MadeFile>> {
    const things = await this.#answer(() => this.#openStore().things());
    if (!things.ok) return things;
    try {
      return succeed(await this.#options.print(job, things.value, (id) => this.#openStore().photoBytes(id)));
    } catch (error) {
      if (error instanceof SheetProblem) return fail('not-valid', error.message, error.remedy);
      return { ok: false, problem: problemOf(error, plainWords().host.files.what[job.what]) };
    }
  }

  #openStore(): ProjectStore {
    if (this.#store) return this.#store;
    const { message, remedy } = plainWords().host.files.noneOpen;
    throw new ProblemError('no-file-open', message, remedy);
  }

  #whole(store: ProjectStore): OpenProject {
    return openProject(store, store.things());
  }

  /** Runs one call; `path` is what its problems are about, without one the open file. */
  async #answer<T>(call: () => T | Promise<T>, path?: string): Promise<Result<T>> {
    try {
      return succeed(await call());
    } catch (error) {
      const problem = problemOf(error, path ?? this.#store?.path ?? plainWords().host.files.what.file);
      if (problem.code === 'overwritten') this.#told = 'overwritten';
      return { ok: false, problem };
    }
  }

  #tellChanged(windowId: string, changes: readonly Change[], state: FileState): void {
    this.#tell(windowId, { type: 'changed', changes, state });
  }

  #tellProblem({ problem }: ProblemError): void {
    for (const listener of this.#listeners.keys()) listener({ type: 'problem', problem });
  }

  #tell(windowId: string, event: HostEvent): void {
    for (const [listener, listenerWindow] of this.#listeners) if (listenerWindow !== windowId) listener(event);
  }
}

/** Registers are a service to readers without the app: that they can't be written must stop nothing. */
function refreshRegisters(store: ProjectStore): void {
  try {
    store.refreshRegisters(registersOf);
  } catch (error) {
    const { code } = problemOf(error, store.path);
    if (code === 'failed') console.error(`The registers in ${store.path} could not be brought up to date:`, error);
  }
}

/** Makes a copy of what is open in the first of the folders that takes one. */
function keepACopy(store: ProjectStore, folders: readonly (() => string)[]): { copyPath: string; lost: Lost | null } {
  let why = '';
  for (const folder of folders) {
    try {
      const copyPath = freeName(store.path, 'kept', folder());
      return { copyPath, lost: store.copyTo(copyPath, false, registersOf) };
    } catch (error) {
      why = problemOf(error, store.path).message;
    }
  }
  throw notKept(store.path, why);
}

function openProject(store: ProjectStore, things: readonly Thing[]): OpenProject {
  const holdsUnknown = store.holdsUnknown(things);
  return { path: store.path, fileName: nameOfFile(store.path), things, state: store.state(), holdsUnknown };
}

function absolutePath(path: string): string {
  if (isAbsolute(path)) return normalize(path);
  const { message, remedy } = plainWords().host.files.notWhole;
  throw new ProblemError('not-valid', message({ path }), remedy);
}

function projectPath(path: string): string {
  return withEnding(absolutePath(path));
}

function assertFolder(path: string): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) return;
  const { message, remedy } = plainWords().host.files.noFolder;
  throw new ProblemError('not-found', message({ path }), remedy);
}
