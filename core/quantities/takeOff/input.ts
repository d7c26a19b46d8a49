import type { Project } from '../../model/project.ts';
import type { OrderSettings, Status } from '../../model/things.ts';
import type { Survey } from '../../survey/types.ts';

/** What a take-off is made from. */
export interface TakeOffInput {
  readonly project: Project;
  readonly survey: Survey;
  readonly settings: OrderSettings;
}

/** Whether a thing of this status is to be counted. */
export function counts({ settings }: Pick<TakeOffInput, 'settings'>, status: Status): boolean {
  return settings.count === 'all' || status === 'planned';
}
