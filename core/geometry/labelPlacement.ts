import type { Box } from './box.ts';
import { createBoxGrid } from './boxGrid.ts';
import type { Xy } from './types.ts';

/** A label to be placed. Lengths in any one unit: metres on the ground, millimetres on paper, pixels. */
export interface Label<Id> {
  readonly id: Id;
  /** What it names. */
  readonly anchor: Xy;
  readonly width: number;
  readonly height: number;
  /** Where its middle may stand, as steps from the anchor, the best first; see `labelSpots`. */
  readonly candidates: readonly Xy[];
  /** Larger goes first; of equals, the earlier in the list. */
  readonly priority: number;
  /** Placed before all others and never left out: what the user has chosen. */
  readonly pinned?: boolean;
}

export interface PlacedLabel<Id> {
  readonly id: Id;
  readonly box: Box;
  /** Which of its candidates, from 0. */
  readonly candidate: number;
}

export interface LabelPlacement<Id> {
  readonly placed: readonly PlacedLabel<Id>[];
  /** Labels that found no room. */
  readonly hidden: readonly Id[];
}

export interface LabelSurroundings {
  /** Boxes that no label may cover: symbols. */
  readonly obstacles?: readonly Box[];
  /** Labels lie wholly inside: the window, the sheet. */
  readonly bounds?: Box;
}

/**
 * Places labels so that none overlaps another or an obstacle: one after the other, each on its first free candidate
 * (the greedy way, as J. Christensen, J. Marks and S. Shieber describe in "An empirical study of algorithms for
 * point-feature label placement", ACM Transactions on Graphics 14, 1995). A pinned label without a free candidate
 * stands on its first one, come what may; others are hidden. Labels may share an edge.
 */
export function placeLabels<Id>(
  labels: readonly Label<Id>[],
  { obstacles = [], bounds }: LabelSurroundings = {},
): LabelPlacement<Id> {
  const taken = createBoxGrid(typicalSize(labels));
  for (const obstacle of obstacles) taken.add(obstacle);
  const placed: PlacedLabel<Id>[] = [];
  const hidden: Id[] = [];
  for (const label of labels.toSorted(byPriority)) {
    const free = label.candidates.findIndex((step) => {
      const box = boxAt(label, step);
      return isInside(box, bounds) && !taken.overlaps(box);
    });
    const candidate = free === -1 && label.pinned ? 0 : free;
    const box = candidate === -1 ? null : boxAt(label, label.candidates[candidate] ?? [0, 0]);
    if (box?.every(Number.isFinite)) {
      taken.add(box);
      placed.push({ id: label.id, box, candidate });
    } else hidden.push(label.id);
  }
  return { placed, hidden };
}

/**
 * The eight places around a point, right and above first, with a gap between point and label. `yDown` for screens and
 * paper, where y grows downwards.
 */
export function labelSpots(width: number, height: number, gap: number, yDown = false): Xy[] {
  const right = width / 2 + gap;
  const up = (height / 2 + gap) * (yDown ? -1 : 1);
  return [
    [right, up],
    [right, 0],
    [right, -up],
    [-right, up],
    [-right, 0],
    [-right, -up],
    [0, up],
    [0, -up],
  ].map(([x, y]): Xy => [x! + 0, y! + 0]);
}

function byPriority<Id>(a: Label<Id>, b: Label<Id>): number {
  return Number(b.pinned ?? false) - Number(a.pinned ?? false) || b.priority - a.priority;
}

function boxAt<Id>({ anchor: [x, y], width, height }: Label<Id>, [dx, dy]: Xy): Box {
  return [x + dx - width / 2, y + dy - height / 2, x + dx + width / 2, y + dy + height / 2];
}

function isInside(box: Box, bounds: Box | undefined): boolean {
  return !bounds || (box[0] >= bounds[0] && box[1] >= bounds[1] && box[2] <= bounds[2] && box[3] <= bounds[3]);
}

function typicalSize<Id>(labels: readonly Label<Id>[]): number {
  const widest = labels
    .map(({ width, height }) => Math.max(width, height))
    .filter((size) => size > 0 && size < Infinity);
  return widest.length === 0 ? 1 : widest.reduce((sum, size) => sum + size, 0) / widest.length;
}
