import type { Change } from '../model/difference.ts';
import type { Thing } from '../model/things.ts';
import type { CallsOf } from './calls.ts';
import type { Problem } from './result.ts';

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
export interface ProjectApi extends CallsOf<'project'> {
  /** Calls `listener` on each event until the returned function is called. */
  subscribe(listener: (event: HostEvent) => void): () => void;
}

/** What only a desktop window can do. Over the loopback host each call answers `not-available`. */
export type DesktopApi = CallsOf<'desktop'>;

/** The host as a window sees it, whichever way it is reached. */
export interface Host {
  readonly project: ProjectApi;
  readonly desktop: DesktopApi;
}
