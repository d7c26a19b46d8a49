import type { Px } from '../plane/view.ts';

/** A text that wants a place on the picture. Sizes and places in pixels. */
export interface LabelWish {
  readonly text: string;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Centres where it may stand, the best first. */
  readonly places: readonly Px[];
  /** Higher ones choose first. */
  readonly rank: number;
  /** Stands at its first place even over others: what the user chose. */
  readonly always?: boolean;
}

export interface PlacedLabel<W extends LabelWish> {
  readonly wish: W;
  readonly centre: Px;
}

const cellPx = 64;

/**
 * Gives each label the first of its places where it covers no other, by rank; labels that find none are left out.
 * Those that must always stand come first and keep the others away.
 */
export function placeLabels<W extends LabelWish>(wishes: readonly W[], gapPx = 2): PlacedLabel<W>[] {
  const taken = new Map<string, Rect[]>();
  const placed: PlacedLabel<W>[] = [];
  const inOrder = wishes.toSorted((a, b) => Number(b.always ?? false) - Number(a.always ?? false) || b.rank - a.rank);
  for (const wish of inOrder) {
    const free = wish.places.find((centre) => isFree(taken, rectOf(wish, centre, gapPx)));
    const centre = free ?? (wish.always ? wish.places[0] : undefined);
    if (!centre) continue;
    take(taken, rectOf(wish, centre, 0));
    placed.push({ wish, centre });
  }
  return placed;
}

interface Rect {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

function rectOf({ widthPx, heightPx }: LabelWish, [x, y]: Px, gapPx: number): Rect {
  const [dx, dy] = [widthPx / 2 + gapPx, heightPx / 2 + gapPx];
  return { left: x - dx, top: y - dy, right: x + dx, bottom: y + dy };
}

function* cellsOf({ left, top, right, bottom }: Rect): Generator<string> {
  for (let i = Math.floor(left / cellPx); i <= right / cellPx; i++) {
    for (let j = Math.floor(top / cellPx); j <= bottom / cellPx; j++) yield `${i},${j}`;
  }
}

function isFree(taken: ReadonlyMap<string, readonly Rect[]>, rect: Rect): boolean {
  for (const cell of cellsOf(rect)) {
    for (const other of taken.get(cell) ?? []) {
      if (rect.left < other.right && other.left < rect.right && rect.top < other.bottom && other.top < rect.bottom) {
        return false;
      }
    }
  }
  return true;
}

function take(taken: Map<string, Rect[]>, rect: Rect): void {
  for (const cell of cellsOf(rect)) {
    const there = taken.get(cell);
    if (there) there.push(rect);
    else taken.set(cell, [rect]);
  }
}
