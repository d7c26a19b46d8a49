/** A tile that can be fetched, by a key that no other tile has. */
export interface TileRequest {
  readonly key: string;
  /** Rejects where it can't be had now, which is not remembered. */
  readonly load: () => Promise<Uint8Array | null>;
}

/** Tiles as the map draws them, the ones used last kept; at 512 pixels square one takes about a megabyte. */
export interface TileCache {
  /** The tile if it is here; undefined while it is not, null where there is none. */
  peek(key: string): ImageBitmap | null | undefined;
  /** As `peek`, and sends for it. */
  get(request: TileRequest): ImageBitmap | null | undefined;
  /** Drops what was asked for and has not begun to come: the view has moved on. */
  forgetWaiting(): void;
  clear(): void;
}

const mostTiles = 220;
const atOnce = 6;

/** `onTile` is called when a tile has come. */
export function createTileCache(onTile: () => void): TileCache {
  const tiles = new Map<string, ImageBitmap | null>();
  const waiting = new Map<string, TileRequest>();
  const coming = new Set<string>();
  let generation = 0;

  function start(): void {
    for (const [key, request] of waiting) {
      if (coming.size >= atOnce) return;
      waiting.delete(key);
      coming.add(key);
      void fetchTile(request, generation);
    }
  }

  async function fetchTile({ key, load }: TileRequest, begunIn: number): Promise<void> {
    const bytes = await load().catch(() => undefined);
    const tile = await decoded(bytes ?? null).catch(() => null);
    if (begunIn !== generation) return tile?.close();
    coming.delete(key);
    if (bytes === undefined) return start();
    tiles.set(key, tile);
    dropOldest();
    start();
    onTile();
  }

  function dropOldest(): void {
    for (const [key, tile] of tiles) {
      if (tiles.size <= mostTiles) return;
      tiles.delete(key);
      tile?.close();
    }
  }

  function peek(key: string): ImageBitmap | null | undefined {
    const tile = tiles.get(key);
    if (tile === undefined) return undefined;
    tiles.delete(key);
    tiles.set(key, tile);
    return tile;
  }

  return {
    peek,
    get(request) {
      const tile = peek(request.key);
      if (tile === undefined && !coming.has(request.key)) {
        waiting.set(request.key, request);
        start();
      }
      return tile;
    },
    forgetWaiting: () => waiting.clear(),
    clear() {
      generation += 1;
      waiting.clear();
      coming.clear();
      for (const tile of tiles.values()) tile?.close();
      tiles.clear();
    },
  };
}

async function decoded(bytes: Uint8Array | null): Promise<ImageBitmap | null> {
  return bytes ? createImageBitmap(new Blob([bytes as Uint8Array<ArrayBuffer>])) : null;
}
