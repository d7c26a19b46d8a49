import { kindsIn } from '../../kinds/allKinds.ts';
import type { Edit, NewId } from '../../model/edits/support/edit.ts';
import { largestOf } from '../../model/extremes.ts';
import { type Project, put } from '../../model/project.ts';
import type { Handover, RevisedThing } from '../../model/recordThings.ts';

/** What a handover freezes: the drawing and the record, not the order nor what lies under the drawing. */
const revisedKinds = kindsIn('handover');

/** Freezes the property as it stands under the next number. */
export function handOver(words: Pick<Handover, 'date' | 'by' | 'to' | 'note'>, newId: NewId): Edit {
  return (project) =>
    put(project, {
      kind: 'handover',
      id: newId('handover'),
      number: nextHandoverNumber(project),
      ...words,
      things: revisedKinds.flatMap((kind) => [...project[kind].values()] as RevisedThing[]),
    });
}

export function nextHandoverNumber(project: Project): number {
  return 1 + Math.max(0, largestOf([...project.handover.values()].map(({ number }) => number)));
}

/** The handovers, the newest first. */
export function handoversOf(project: Project): Handover[] {
  return [...project.handover.values()].sort((a, b) => b.number - a.number);
}
