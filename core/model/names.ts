import { describedAs } from '../kinds/allKinds.ts';
import type { Project } from './project.ts';
import type { Kind } from './things.ts';

/** The next free name of a kind: its prefix and one more than the highest number in use. */
export function nextName(project: Project, kind: Kind, prefix = describedAs(kind).prefix ?? ''): string {
  let highest = 0;
  for (const thing of project[kind].values()) {
    if (!('name' in thing) || !thing.name.startsWith(prefix)) continue;
    const rest = thing.name.slice(prefix.length);
    if (/^\d{1,9}$/.test(rest)) highest = Math.max(highest, Number(rest));
  }
  return `${prefix}${highest + 1}`;
}
