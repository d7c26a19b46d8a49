import type { Result } from './result.ts';

/** What only a desktop window can do. Over the loopback host each answers `not-available`. */
export interface DesktopApi {
  /** The system's own dialog for opening a project; null: cancelled. */
  chooseOpenPath(): Promise<Result<string | null>>;
  /** The system's own dialog for choosing an MBTiles file; null: cancelled. */
  chooseTileFile(): Promise<Result<string | null>>;
  /** The system's own dialog for naming a new file; null: cancelled. */
  chooseSavePath(request: { readonly suggestedName: string }): Promise<Result<string | null>>;
}
