import { type Stock, totalLength } from './stock.ts';

/**
 * Whether rolls of these lengths certainly can't hold all pieces. For any step t, pieces of whole steps need at least
 * floor(piece / t) steps each and a roll has floor(roll / t) of them (a dual-feasible function, S. P. Fekete and
 * J. Schepers, "New classes of fast lower bounds for bin packing problems", Mathematical Programming 91, 2001).
 */
export function cannotHold(stock: Stock, rolls: readonly number[]): boolean {
  if (sum(rolls) < totalLength(stock)) return true;
  const steps = new Set<number>();
  for (const length of stock.lengths) for (const share of [1, 2, 3]) if (length >= share) steps.add(length / share);
  for (const step of steps) {
    let needed = 0;
    for (const [type, length] of stock.lengths.entries()) needed += stock.counts[type]! * wholeSteps(length, step);
    let held = 0;
    for (const roll of rolls) held += wholeSteps(roll, step);
    if (needed > held) return true;
  }
  return false;
}

function sum(lengths: readonly number[]): number {
  return lengths.reduce((total, length) => total + length, 0);
}

/** Steps that go into a length; a little slack, as a third of a length is no exact number. */
function wholeSteps(length: number, step: number): number {
  return Math.floor(length / step + 1e-9);
}
