import type { FaultSearchGround } from './faultSearchGround.ts';

/** The pieces as they are fed with the ring switches open: each hangs on one other. */
export interface FaultSearchTree {
  /** The piece that feeds each; -1 for the one at the energiser, and where nothing feeds it. */
  readonly parent: Int32Array;
  /** The switch each is fed through; '' at the energiser. */
  readonly through: readonly string[];
}

export function faultSearchTree(
  { pieces, switches, source }: FaultSearchGround,
  openedFirst: readonly string[],
): FaultSearchTree {
  const open = new Set(openedFirst);
  const at: { to: number; id: string }[][] = pieces.map(() => []);
  for (const { id, a, b } of switches) {
    if (open.has(id)) continue;
    at[a]!.push({ to: b, id });
    at[b]!.push({ to: a, id });
  }
  const parent = new Int32Array(pieces.length).fill(-1);
  const through = pieces.map(() => '');
  const seen = new Set([source]);
  for (const piece of seen) {
    for (const { to, id } of at[piece]!) {
      if (seen.has(to)) continue;
      seen.add(to);
      parent[to] = piece;
      through[to] = id;
    }
  }
  return { parent, through };
}

/** Switches from the energiser to a piece, in order. */
export function wayInto({ parent, through }: FaultSearchTree, piece: number): string[] {
  const way: string[] = [];
  for (let at = piece; parent[at]! >= 0; at = parent[at]!) way.push(through[at]!);
  return way.reverse();
}

/** Switches through which a piece feeds others. */
export function waysOut({ parent, through }: FaultSearchTree, piece: number): string[] {
  return through.filter((_, other) => parent[other] === piece);
}
