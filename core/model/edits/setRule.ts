import { put, remove } from '../project.ts';
import type { SwitchRule } from '../things.ts';
import type { Edit } from './support/edit.ts';

export interface SetRule {
  /** The place's key as text, see `core/model/placeKey.ts`. */
  readonly key: string;
  /** `null` leaves the place to the plan again. */
  readonly rule: SwitchRule['rule'] | null;
}

/** Says that a switch must, or must not, go at a place. */
export function setRule({ key, rule }: SetRule): Edit {
  return (project) => {
    const old = project.switchRule.get(key);
    if (rule === (old?.rule ?? null)) return project;
    return rule === null ? remove(project, old!) : put(project, { kind: 'switchRule', id: key, rule });
  };
}
