import { kindsIn } from '../../kinds/allKinds.ts';
import { withDependants } from '../../model/edits/deleteThings.ts';
import type { NewId } from '../../model/edits/support/edit.ts';
import { isKind, type Project, put, putAll, remove, removeAll } from '../../model/project.ts';
import type { DrawnThing, KeptPlan, Thing } from '../../model/things.ts';
import { nameNewKeptPlan } from '../order/keptPlanName.ts';

/** What makes up a plan. Readings and records stay as they are: they say what once was. */
const planKinds = kindsIn('keptPlan');

/** Keeps the drawing as it stands under a name. `date` is ISO 8601. */
export function keepPlan(name: string, date: string) {
  return (project: Project, newId: NewId): Project => {
    const plan: KeptPlan = {
      kind: 'keptPlan',
      id: newId('keptPlan'),
      name: name.trim() || nameNewKeptPlan(project),
      date,
      note: '',
      things: drawnThings(project),
    };
    return put(project, plan);
  };
}

/** The project with a kept plan's drawing in place of the one that stands; prices, rolls and stages stay. */
export function goBackTo(planId: string): (project: Project) => Project {
  return (project) => {
    const plan = project.keptPlan.get(planId);
    return plan ? withDrawing(project, plan.things) : project;
  };
}

export function deleteKeptPlan(planId: string): (project: Project) => Project {
  return (project) => {
    const plan = project.keptPlan.get(planId);
    return plan ? remove(project, plan) : project;
  };
}

/**
 * The project with another drawing; what is not in it goes with all that was said or recorded of it alone. A thing that
 * is just the same in both keeps its identity; one of a kind that only a newer version knows stays in the plan alone.
 */
export function withDrawing(project: Project, things: readonly DrawnThing[]): Project {
  const wanted = new Set(things.map(({ kind, id }) => `${kind} ${id}`));
  const going = drawnThings(project).filter(({ kind, id }) => !wanted.has(`${kind} ${id}`));
  const coming = things.filter((thing) => isKind(thing.kind) && !isSame(project[thing.kind].get(thing.id), thing));
  const both = putAll(project, coming);
  return removeAll(both, withDependants(both, going));
}

function drawnThings(project: Project): DrawnThing[] {
  return planKinds.flatMap((kind) => [...project[kind].values()] as DrawnThing[]);
}

function isSame(a: Thing | undefined, b: Thing): boolean {
  return a !== undefined && (a === b || JSON.stringify(a) === JSON.stringify(b));
}
