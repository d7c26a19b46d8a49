import { kinds, type Project } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';

/** The thing with this id, of whatever kind; ids are unique across kinds. */
export function findThing(project: Project, id: string): Thing | null {
  for (const kind of kinds) {
    const thing = project[kind].get(id);
    if (thing) return thing;
  }
  return null;
}
