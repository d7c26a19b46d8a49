import type { Change } from '../model/difference.ts';
import type { Thing } from '../model/things.ts';
import type { FindOptions } from './findOptions.ts';
import type { OrderOptions } from './orderOptions.ts';
import type { PackOptions } from './packOptions.ts';
import type { PhotoApi } from './photoApi.ts';
import type { PictureApi } from './pictureApi.ts';
import type { Problem, Result } from './result.ts';
import type { SheetOptions } from './sheetOptions.ts';
import type { WindowSettings } from './windowSettings.ts';

/** The file that is open, whole. */
export interface OpenProject {
  readonly path: string;
  /** The file's name without folder and ending, for titles. */
  readonly fileName: string;
  readonly things: readonly Thing[];
  readonly state: FileState;
  /** The file holds details, or things, that only a newer version knows. They are kept as they are. */
  readonly holdsUnknown: boolean;
}

/** Where the file stands after an edit. */
export interface FileState {
  /** Counts every change to the file, also undo and redo. */
  readonly revision: number;
  /** Label of the step that undo would take back, or null. */
  readonly undo: string | null;
  /** Label of the step that redo would bring again, or null. */
  readonly redo: string | null;
}

export interface Edit {
  /** The revision that the edit was made on; a file that has moved on refuses it as `out-of-date`. */
  readonly baseRevision: number;
  /** What undo will call it: "Place gateway G4". */
  readonly label: string;
  readonly changes: readonly Change[];
  /** Edits with the same key, one after another, become one step of undo (a slider being dragged). */
  readonly mergeKey?: string;
}

/** What undo or redo did to the file. */
export interface Replay {
  readonly label: string;
  readonly changes: readonly Change[];
  readonly state: FileState;
}

export interface RecentFile {
  readonly path: string;
  readonly fileName: string;
  /** ISO 8601. */
  readonly openedAt: string;
  /** False: it is no longer there. */
  readonly present: boolean;
}

export interface ListedFile {
  readonly name: string;
  readonly sizeBytes: number;
  /** ISO 8601. */
  readonly changedAt: string;
}

/** A folder as the file chooser shows it: its folders, the project files and the tile files in it, nothing else. */
export interface FolderListing {
  readonly path: string;
  /** The folder above, or null at the top. */
  readonly parent: string | null;
  readonly folders: readonly string[];
  readonly projects: readonly ListedFile[];
  readonly tileFiles: readonly ListedFile[];
}

/** Something to hand to the user: a PDF, a GeoJSON text. */
export interface MadeFile {
  readonly fileName: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}

/** What a host tells its windows without being asked. */
export type HostEvent =
  /** Another window of this host changed the file. */
  | { readonly type: 'changed'; readonly changes: readonly Change[]; readonly state: FileState }
  /** Another file is open now (null: none). */
  | { readonly type: 'opened'; readonly path: string | null }
  /** Something is wrong with the open file, or was when it was left, though nobody asked. */
  | { readonly type: 'problem'; readonly problem: Problem };

/**
 * All that a window asks of its host. Data only: the same calls go over Electron's IPC and over the loopback host, and
 * one suite of contract tests runs over both. Every call that writes is one transaction, durable when it answers.
 */
export interface ProjectApi extends PictureApi, PhotoApi {
  /** The file that is open now, or null. */
  current(): Promise<Result<OpenProject | null>>;
  /** Makes a new file at `path` and opens it. Refuses to write over a file that is there. */
  create(request: { readonly path: string; readonly name: string }): Promise<Result<OpenProject>>;
  open(request: { readonly path: string }): Promise<Result<OpenProject>>;
  /** Copies the demo property to the user's project folder (under a free name) and opens it. */
  openDemo(): Promise<Result<OpenProject>>;
  close(): Promise<Result<null>>;
  /** Writes a whole copy of the open file, with its undo, and goes on in the copy. */
  saveAs(request: { readonly path: string; readonly replace: boolean }): Promise<Result<OpenProject>>;
  recent(): Promise<Result<readonly RecentFile[]>>;
  /** How this user's windows look. */
  windowSettings(): Promise<Result<WindowSettings>>;
  keepWindowSettings(settings: WindowSettings): Promise<Result<null>>;
  /** Folders and project files of `path`; without one, of the user's project folder, which is made if need be. */
  listFolder(request: { readonly path: string | null }): Promise<Result<FolderListing>>;

  apply(edit: Edit): Promise<Result<FileState>>;
  undo(): Promise<Result<Replay | null>>;
  redo(): Promise<Result<Replay | null>>;

  /** The map sheet with its registers as a PDF, computed from the file as it stands. */
  printSheets(options: SheetOptions): Promise<Result<MadeFile>>;
  /** The order with its cut lists and quantities as a PDF, computed from the file as it stands. */
  printOrder(options: OrderOptions): Promise<Result<MadeFile>>;
  /** A sheet to find a crossing by, or of what lies near a dig, as a PDF. */
  printFind(options: FindOptions): Promise<Result<MadeFile>>;
  /** The handover pack as a PDF, computed from the file as it stands. */
  printPack(options: PackOptions): Promise<Result<MadeFile>>;

  /** Every register with its places as a GeoPackage, computed from the file as it stands. */
  makeGeoPackage(): Promise<Result<MadeFile>>;

  /** Calls `listener` on each event until the returned function is called. */
  subscribe(listener: (event: HostEvent) => void): () => void;
}
