import type { Steps } from '../../model/steps.ts';

/** A section is in doubt when at least this share of its own direction lies in what the readings leave open. */
const IN_DOUBT = 0.1;
/** Two in doubt belong together when what is open ties them by more than this. */
const TIED = 0.01;

/**
 * Groups of sections that the readings cannot tell apart. `open` are the directions, orthonormal, that they leave open;
 * any other basis of the same space gives the same groups, since only the projection onto it is used.
 */
export function* notToldApart(open: readonly (readonly number[])[], count: number): Steps<number[][]> {
  const tie = (s: number, t: number): number => open.reduce((sum, direction) => sum + direction[s]! * direction[t]!, 0);
  const waiting = new Set<number>();
  for (let s = 0; s < count; s++) if (tie(s, s) >= IN_DOUBT) waiting.add(s);
  const groups: number[][] = [];
  for (const first of waiting) {
    const group = [first];
    waiting.delete(first);
    for (const s of group) {
      for (const t of waiting) {
        if (Math.abs(tie(s, t)) < TIED) continue;
        group.push(t);
        waiting.delete(t);
      }
      yield;
    }
    groups.push(group.sort((a, b) => a - b));
  }
  return groups;
}
