import type { Project } from './project.ts';
import type { Kind } from './things.ts';

/** What the things of a kind are called until the user names them: "G12". */
const prefixes: Partial<Record<Kind, string>> = {
  fenceLine: 'F',
  gateway: 'G',
  switch: 'S',
  post: 'P',
  energiser: 'E',
  leadOut: 'L',
  paddock: 'Paddock ',
  service: 'Service ',
  underlay: 'Map ',
};

/** The next free name of a kind: its prefix and one more than the highest number in use. */
export function nextName(project: Project, kind: Kind, prefix = prefixes[kind] ?? ''): string {
  let highest = 0;
  for (const thing of project[kind].values()) {
    if (!('name' in thing) || !thing.name.startsWith(prefix)) continue;
    const rest = thing.name.slice(prefix.length);
    if (/^\d{1,9}$/.test(rest)) highest = Math.max(highest, Number(rest));
  }
  return `${prefix}${highest + 1}`;
}
