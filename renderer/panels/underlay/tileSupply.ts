import type { TileSupply } from '../../map/underlay/types.ts';
import { host } from '../../state/session.ts';
import { leaveOut, useTileFiles } from './tileFileStates.ts';

/** Tiles from the host; one of a picture that can't be had is as one that is not there. */
export const tileSupply: TileSupply = {
  async picture(key) {
    const tile = await host().project.pictureTile(key);
    return tile.ok ? tile.value : null;
  },
  async tileFile(key) {
    const tile = await host().project.tileFileTile(key);
    if (tile.ok) return tile.value;
    leaveOut(key.path, tile.problem);
    throw new Error(tile.problem.message);
  },
  isOpen: (path) => useTileFiles.getState().get(path)?.is === 'open',
  onTileFiles: (listener) => useTileFiles.subscribe(listener),
};
