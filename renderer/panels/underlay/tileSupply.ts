import type { TileSupply } from '../../map/underlay/types.ts';
import { host } from '../../state/session.ts';

/** Tiles from the host; one that can't be had is as one that is not there. */
export const tileSupply: TileSupply = {
  async picture(key) {
    const tile = await host().project.pictureTile(key);
    return tile.ok ? tile.value : null;
  },
  async tileFile(key) {
    const tile = await host().project.tileFileTile(key);
    return tile.ok ? tile.value : null;
  },
};
