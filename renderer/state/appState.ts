import { create } from 'zustand';
import type { FileState, RecentFile } from '../../core/api/projectApi.ts';
import type { Problem } from '../../core/api/result.ts';
import type { Finding } from '../../core/checks/finding.ts';
import type { GroundAnswer } from '../../core/locate/inGround/answer.ts';
import type { GroundQuestion } from '../../core/locate/inGround/question.ts';
import type { Project } from '../../core/model/project.ts';
import type { FitAnswer } from '../../core/survey/power/fitReadings.ts';
import type { PowerTables } from '../../core/survey/power/powerTables.ts';
import type { DividePlan, Survey } from '../../core/survey/types.ts';
import type { AnalysisPart } from '../work/analysisMessages.ts';

/** What the inspector is open at: its cover (the property and its files) or one of the workspaces. */
export type Page = 'cover' | 'draw' | 'divide' | 'power' | 'order' | 'record' | 'find';

/** The file that is open and all that is computed from it; replaced as a whole after each edit. */
export interface OpenFile {
  readonly path: string;
  readonly fileName: string;
  readonly project: Project;
  readonly survey: Survey;
  readonly state: FileState;
}

/** What the worker last worked out. Each part may be of an older state of the drawing: see `of`. */
export interface AnalysisResult {
  /** The newest state of the drawing that the worker was told of. */
  readonly revision: number;
  readonly findings: readonly Finding[];
  readonly plan: DividePlan | null;
  readonly powerTables: PowerTables | null;
  /** Leakage fitted to readings. */
  readonly fit: FitAnswer | null;
  /** The state of the drawing that each part is of; none: not worked out yet. */
  readonly of: Partial<Readonly<Record<AnalysisPart, number>>>;
  /** Why a part could not be worked out for the newest state. */
  readonly failed: Partial<Readonly<Record<AnalysisPart, string>>>;
  /** A better plan is being looked for; how far that is, 0 to 1. Null: not now. */
  readonly planning: number | null;
  /** The user stopped the search for a better plan. */
  readonly planStopped: boolean;
}

export type Dialog =
  | { readonly kind: 'chooseFile'; readonly purpose: 'open' | 'new' | 'copy' }
  | { readonly kind: 'chooseTileFile' }
  | { readonly kind: 'print' }
  | { readonly kind: 'pack' }
  | { readonly kind: 'importMap'; readonly fileName: string; readonly bytes: Uint8Array }
  | { readonly kind: 'keys' };

/** What is asked before an edit goes on; `answer` with null leaves it. */
export interface AskedQuestion {
  readonly question: GroundQuestion;
  readonly answer: (given: GroundAnswer | null) => void;
}

/** The last line of the inspector: what just happened, or why it could not. */
export interface LastLine {
  readonly text: string;
  readonly kind: 'done' | 'refused';
}

export interface AppState {
  /** `notLetIn`: in a browser that came without a good ticket. */
  readonly phase: 'starting' | 'ready' | 'notLetIn' | 'lost';
  readonly file: OpenFile | null;
  readonly recent: readonly RecentFile[];
  readonly analysis: AnalysisResult | null;
  /** Edits that were made and are not yet in the file. */
  readonly saving: number;
  readonly page: Page;
  /** Ids of the chosen things, the last one first in mind. */
  readonly chosen: readonly string[];
  /** The thing under the pointer, in the inspector or on the map. */
  readonly pointed: string | null;
  /** Ids of the pieces that make up the figure being pointed at. */
  readonly lit: readonly string[];
  /** Fence type of the next line that is drawn; null: the property's first. */
  readonly nextFenceTypeId: string | null;
  readonly dialog: Dialog | null;
  readonly groundQuestion: AskedQuestion | null;
  readonly problem: Problem | null;
  readonly lastLine: LastLine | null;
  readonly theme: 'light' | 'dark';
  /** By whose habits numbers and dates are shown; null: the system's. */
  readonly locale: string | null;
  /** The tag of the language that all texts are in. */
  readonly language: string;
  readonly bookWidthPx: number;
  /** Ids of the switches that Power shows open, to see what it would do; null: as they normally stand. */
  readonly shownOpen: readonly string[] | null;
}

export const useApp = create<AppState>(() => ({
  phase: 'starting',
  file: null,
  recent: [],
  analysis: null,
  saving: 0,
  page: 'cover',
  chosen: [],
  pointed: null,
  lit: [],
  nextFenceTypeId: null,
  dialog: null,
  groundQuestion: null,
  problem: null,
  lastLine: null,
  theme: 'light',
  locale: null,
  language: 'en',
  bookWidthPx: 420,
  shownOpen: null,
}));

/** The open file; for parts of the window that exist only while one is open. */
export function useOpenFile(): OpenFile {
  const file = useApp((state) => state.file);
  if (!file) throw new Error('No project file is open.');
  return file;
}
