import { message } from '../../words/message.ts';
import { nextName } from '../names.ts';
import { put, removeAll } from '../project.ts';
import { refTo } from '../refTo.ts';
import type { CutOutSwitch, SwitchPlace } from '../things.ts';
import { withDependants } from './deleteThings.ts';
import { type Edit, firstRefusalOf, guarded, type NewId, type Refusal, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { whyNotSwitchPlace } from './support/switchPlace.ts';

/** What a division plan asks for beyond the switches that are drawn; a `DividePlan` will do. */
export interface AcceptPlan {
  readonly missing: readonly { readonly place: SwitchPlace }[];
  /** Ids of switches that the plan does without. */
  readonly surplus: readonly string[];
}

/** Draws the switches that the plan misses, unpinned, and takes away those it does without, with the user's word on them. */
export function acceptPlan(plan: AcceptPlan, newId: NewId): Edit {
  return guarded(whyNotAcceptPlan(plan), (project) => {
    const surplus = plan.surplus.map((id) => ({ kind: 'switch' as const, id }));
    const kept = removeAll(project, withDependants(project, surplus));
    return plan.missing.reduce((now, { place }) => {
      const cutOut: CutOutSwitch = {
        kind: 'switch',
        id: newId('switch'),
        name: nextName(now, 'switch'),
        place,
        normally: 'closed',
        pinned: false,
        status: 'planned',
        note: '',
      };
      return put(now, cutOut);
    }, kept);
  });
}

/** `notFound`, `built` (a surplus switch that is really there), and what `whyNotSwitchPlace` refuses. */
export function whyNotAcceptPlan({ missing, surplus }: AcceptPlan): WhyNot {
  return (project) => {
    const questions = surplus.flatMap((id) => [
      () => whyNotFound(project, 'switch', id),
      () => whyNotRemovable(found(project, 'switch', id)),
    ]);
    const refusal = firstRefusalOf(questions);
    if (refusal) return refusal;
    const kept = removeAll(
      project,
      surplus.map((id) => found(project, 'switch', id)),
    );
    return firstRefusalOf(
      missing.map(
        ({ place }) =>
          () =>
            whyNotSwitchPlace(kept, place),
      ),
    );
  };
}

function whyNotRemovable(cutOut: CutOutSwitch): Refusal | null {
  if (cutOut.status !== 'built') return null;
  return { code: 'built', message: message('edits.built', { thing: refTo(cutOut) }) };
}
