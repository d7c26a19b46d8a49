import type * as z from 'zod';
import type { answerSchemas, messageSchemas } from './messageSchemas.ts';
import type { PictureProgress, TileFileFacts } from './pictureApi.ts';
import type { FileState, FolderListing, MadeFile, OpenProject, RecentFile, Replay } from './projectApi.ts';
import type { Result } from './result.ts';
import type { WindowSettings } from './windowSettings.ts';

/** The schema that a call's message must pass; `nothing`: it has no message. */
type MessageName = keyof typeof messageSchemas;
/** The schema that an answer must pass which comes out of a stranger's file. */
type AnswerName = keyof typeof answerSchemas;

/** One call of a window to its host. */
export interface Call<Takes extends MessageName = MessageName, Answer = unknown> {
  readonly takes: Takes;
  /** Whether anything is kept of it: in the open file, in another, or in the user's settings. */
  readonly writes: boolean;
  /** Where it carries bytes, which JSON has no word for (`wire.ts`); a message without any need not be looked through. */
  readonly bytes?: 'taken' | 'answered';
  readonly answerPasses?: AnswerName;
  /** Never there: says of what type the answer is. */
  readonly answer?: Answer;
}

type Besides = Pick<Call, 'bytes' | 'answerPasses'>;

const reads =
  <Answer>() =>
  <Takes extends MessageName>(takes: Takes, besides: Besides = {}): Call<Takes, Answer> => ({
    takes,
    writes: false,
    ...besides,
  });

const writes =
  <Answer>() =>
  <Takes extends MessageName>(takes: Takes, besides: Besides = {}): Call<Takes, Answer> => ({
    takes,
    writes: true,
    ...besides,
  });

/**
 * All that a window may ask of its host, each call once: everything else about calls comes from here (the types of both ends, the
 * preload's object, the page's client, the handlers, the check of what was sent). A new one is a line here and its answer in the
 * host (`projectService.ts`, `main/desktop.ts`). `project`: on every transport; `desktop`: only what a desktop window can do,
 * `not-available` over the loopback host.
 */
export const calls = {
  project: {
    /** The file that is open now, or null. */
    current: reads<OpenProject | null>()('nothing'),
    /** Makes a new file at `path` and opens it. Refuses to write over a file that is there. */
    create: writes<OpenProject>()('newFile'),
    open: writes<OpenProject>()('file'),
    /** Copies the demo property to the user's project folder (under a free name) and opens it. */
    openDemo: writes<OpenProject>()('nothing'),
    close: writes<null>()('nothing'),
    /** Writes a whole copy of the open file, with its undo, and goes on in the copy. */
    saveAs: writes<OpenProject>()('copy'),
    recent: reads<readonly RecentFile[]>()('nothing'),
    /** How this user's windows look. */
    windowSettings: reads<WindowSettings>()('nothing'),
    keepWindowSettings: writes<null>()('windowSettings'),
    /** Folders and project files of `path`; without one, of the user's project folder, which is made if need be. */
    listFolder: reads<FolderListing>()('folder'),

    apply: writes<FileState>()('edit'),
    undo: writes<Replay | null>()('nothing'),
    redo: writes<Replay | null>()('nothing'),

    /** The sheets, the order or the like as a PDF, computed from the file as it stands. */
    print: reads<MadeFile>()('printJob', { bytes: 'answered' }),
    /** Every register with its places as a GeoPackage, computed from the file as it stands. */
    makeGeoPackage: reads<MadeFile>()('nothing', { bytes: 'answered' }),

    /** Takes photos in and makes the edit that names them: all of it or nothing, one step of undo. */
    addPhotos: writes<FileState>()('newPhotos', { bytes: 'taken' }),
    /** Bytes of photos or their small copies, in the order asked for; null where the file has none of that id. */
    photoBytes: reads<readonly (Uint8Array | null)[]>()('wantedPhotos', { bytes: 'answered' }),

    // A picture comes in tile by tile and is in the file when `finishPicture` has answered, with the thing that shows it;
    // before that, or after `dropPicture`, there is nothing of it.
    /** Begins to bring a picture in. A picture that was begun before and not finished is given up. */
    beginPicture: writes<{ readonly imageId: string }>()('newPicture'),
    addPictureTiles: writes<PictureProgress>()('pictureTiles', { bytes: 'taken' }),
    /** Takes the picture into the file and makes the edit that lays it under the drawing: one step of undo. */
    finishPicture: writes<FileState>()('finishedPicture'),
    dropPicture: writes<null>()('picture'),
    /** The tile's bytes; null where there is none. */
    pictureTile: reads<Uint8Array | null>()('tileOfPicture', { bytes: 'answered' }),

    /**
     * Looks into an MBTiles file; it stays where it is and is never written to. `chosen`: the user chose it here and now,
     * which is remembered on this machine. One that was never chosen, and does not lie with the property's file, is not touched:
     * `ask-first`. One that does not answer in time is given up until it is chosen again.
     */
    openTileFile: writes<TileFileFacts>()('tileFile', { answerPasses: 'tileFileFacts' }),
    /** A tile of it, rows counted from the north; null where there is none. Opens it if need be, as not chosen. */
    tileFileTile: reads<Uint8Array | null>()('tileOfTileFile', { bytes: 'answered', answerPasses: 'tile' }),
  },
  desktop: {
    /** The system's own dialog for opening a project; null: cancelled. */
    chooseOpenPath: reads<string | null>()('nothing'),
    /** The system's own dialog for choosing an MBTiles file; null: cancelled. */
    chooseTileFile: reads<string | null>()('nothing'),
    /** The system's own dialog for naming a new file; null: cancelled. */
    chooseSavePath: reads<string | null>()('suggestedName'),
  },
} satisfies { readonly [half: string]: Readonly<Record<string, Call>> };

export type Half = keyof typeof calls;

type MessageOf<C> = C extends Call<infer Takes> ? z.infer<(typeof messageSchemas)[Takes]> : never;
type AnswerOf<C> = C extends Call<MessageName, infer Answer> ? Promise<Result<Answer>> : never;

/** The calls of one half as functions. */
export type CallsOf<H extends Half> = {
  readonly [Name in keyof (typeof calls)[H]]: (typeof calls)[H][Name] extends Call<'nothing'>
    ? () => AnswerOf<(typeof calls)[H][Name]>
    : (message: MessageOf<(typeof calls)[H][Name]>) => AnswerOf<(typeof calls)[H][Name]>;
};

/** The calls of one half, each by way of `ask`. */
export function callsBy<H extends Half>(
  half: H,
  ask: (name: string, message?: unknown) => Promise<Result<unknown>>,
): CallsOf<H> {
  const made = Object.entries<Call>(calls[half]).map(([name, { takes }]) => [
    name,
    takes === 'nothing' ? () => ask(name) : (message: unknown) => ask(name, message),
  ]);
  return Object.fromEntries(made) as CallsOf<H>;
}

/** The call of this name; undefined where there is none. `half` and `name` may be whatever was sent. */
export function callNamed(half: string, name: string): Call | undefined {
  if (!Object.hasOwn(calls, half)) return undefined;
  const ofHalf: Readonly<Record<string, Call>> = calls[half as Half];
  return Object.hasOwn(ofHalf, name) ? ofHalf[name] : undefined;
}
