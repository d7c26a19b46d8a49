import type { Item, PaperBox } from '../../drawing/displayList.ts';
import { pushAll } from '../../model/pushAll.ts';
import type { Block } from '../flow/block.ts';

export interface FilledColumns {
  readonly items: readonly Item[];
  /** Blocks for which there was no room, from the first that did not fit. */
  readonly left: readonly Block[];
}

/** Sets blocks below one another, going on in the next column where one is full. */
export function fillColumns(blocks: readonly Block[], columns: readonly PaperBox[]): FilledColumns {
  const items: Item[] = [];
  let column = 0;
  let top = columns[0]?.[1] ?? 0;
  for (let i = 0; i < blocks.length; i++) {
    const block = blocks[i]!;
    const next = block.keepWithNext ? (blocks[i + 1]?.heightMm ?? 0) : 0;
    while (column < columns.length && top + block.heightMm + next > columns[column]![3] + 1e-6) {
      column++;
      top = columns[column]?.[1] ?? 0;
    }
    const place = columns[column];
    if (!place) return { items, left: blocks.slice(i) };
    pushAll(items, block.paint([place[0], top]));
    top += block.heightMm;
  }
  return { items, left: [] };
}
