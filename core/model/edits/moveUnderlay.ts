import { type Project, putAll } from '../project.ts';
import type { Underlay } from '../underlayThings.ts';
import { type Edit, guarded, type WhyNot } from './support/edit.ts';
import { whyNotFound } from './support/find.ts';

export interface MoveUnderlay {
  readonly id: string;
  /** Over the next one, or under it. */
  readonly way: 'up' | 'down';
}

/** The maps and pictures underneath, the lowest first. */
export function underlaysInOrder(project: Project): Underlay[] {
  return [...project.underlay.values()].sort((a, b) => a.rank - b.rank);
}

/** Lays a map or picture over its upper neighbour or under its lower one; at the end of the pile it stays. */
export function moveUnderlay(wanted: MoveUnderlay): Edit {
  return guarded(whyNotMoveUnderlay(wanted), (project) => {
    const pile = underlaysInOrder(project);
    const from = pile.findIndex(({ id }) => id === wanted.id);
    const to = from + (wanted.way === 'up' ? 1 : -1);
    const [moved, other] = [pile[from]!, pile[to]];
    if (!other) return project;
    // Ranks are given anew, since two that came from elsewhere may share one.
    const order = pile.with(from, other).with(to, moved);
    return putAll(
      project,
      order.flatMap((underlay, i) => (underlay.rank === i + 1 ? [] : [{ ...underlay, rank: i + 1 }])),
    );
  });
}

/** `notFound`. */
function whyNotMoveUnderlay({ id }: MoveUnderlay): WhyNot {
  return (project) => whyNotFound(project, 'underlay', id);
}
