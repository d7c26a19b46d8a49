import { message } from '../../../words/message.ts';
import type { Project } from '../../project.ts';
import type { Kind, ThingOf } from '../../things.ts';
import { EditRefused, type Refusal } from './edit.ts';

/** The thing itself. Throws `EditRefused` where it is not there. */
export function found<K extends Kind>(project: Project, kind: K, id: string): ThingOf<K> {
  const thing = project[kind].get(id) as ThingOf<K> | undefined;
  if (!thing) throw new EditRefused(notFound(kind));
  return thing;
}

export function whyNotFound(project: Project, kind: Kind, id: string): Refusal | null {
  return project[kind].has(id) ? null : notFound(kind);
}

function notFound(kind: Kind): Refusal {
  return {
    code: 'notFound',
    message: message('edits.notFound', { kind }),
  };
}

/** The crossing of a gateway, if it has one. */
export function crossingOf(project: Project, gatewayId: string): ThingOf<'crossing'> | null {
  for (const crossing of project.crossing.values()) if (crossing.gatewayId === gatewayId) return crossing;
  return null;
}
