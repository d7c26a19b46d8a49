import type { NewId } from '../../model/edits/support/edit.ts';
import { type Project, put, putAll, removeAll } from '../../model/project.ts';
import { stageMarkId } from '../../model/recordDefaults.ts';
import type { Stage, StageMark } from '../../model/things.ts';
import { stagesOf } from '../order/stages.ts';

/** Adds a stage after all others. */
export function addStage(name: string) {
  return (project: Project, newId: NewId): Project => {
    const last = stagesOf(project).at(-1);
    const stage: Stage = { kind: 'stage', id: newId('stage'), name, rank: last ? last.rank + 1 : 0, note: '' };
    return put(project, stage);
  };
}

/** Takes a stage away; what was in it is in none then. */
export function deleteStage(id: string): (project: Project) => Project {
  return (project) => {
    const stage = project.stage.get(id);
    if (!stage) return project;
    const marks = [...project.stageMark.values()].filter(({ stageId }) => stageId === id);
    return removeAll(project, [stage, ...marks]);
  };
}

/** Puts things into a stage; null takes them out. */
export function putInStage(thingIds: readonly string[], stageId: string | null): (project: Project) => Project {
  return (project) => {
    const known = thingIds.flatMap((thingId) => project.stageMark.get(stageMarkId(thingId)) ?? []);
    if (stageId === null || !project.stage.has(stageId)) return removeAll(project, known);
    const changed = thingIds.filter((thingId) => project.stageMark.get(stageMarkId(thingId))?.stageId !== stageId);
    return putAll(
      project,
      changed.map((thingId): StageMark => ({ kind: 'stageMark', id: stageMarkId(thingId), thingId, stageId })),
    );
  };
}

/** Moves a stage one place earlier or later. */
export function moveStage(id: string, by: -1 | 1): (project: Project) => Project {
  return (project) => {
    const stages = stagesOf(project);
    const from = stages.findIndex((stage) => stage.id === id);
    const other = stages[from + by];
    const stage = stages[from];
    if (!stage || !other) return project;
    const order = stages.with(from, other).with(from + by, stage);
    return putAll(
      project,
      order.flatMap((moved, rank) => (moved.rank === rank ? [] : [{ ...moved, rank }])),
    );
  };
}
