/** Pieces by length: `lengths` descending and all different, `counts` how many of each. */
export interface Stock {
  readonly lengths: readonly number[];
  readonly counts: readonly number[];
}

export function stockOf(pieces: readonly number[]): Stock {
  const lengths: number[] = [];
  const counts: number[] = [];
  for (const length of [...pieces].sort((a, b) => b - a)) {
    if (lengths.at(-1) === length) counts[counts.length - 1]! += 1;
    else {
      lengths.push(length);
      counts.push(1);
    }
  }
  return { lengths, counts };
}

export function totalLength({ lengths, counts }: Stock): number {
  return lengths.reduce((sum, length, type) => sum + length * counts[type]!, 0);
}

/** Work is counted in small steps of about equal effort, so that an answer does not depend on the machine. */
export interface Work {
  left: number;
}
