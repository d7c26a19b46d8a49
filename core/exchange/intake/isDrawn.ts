import type { Project } from '../../model/project.ts';

/** Whether a property has lines, posts or anything else with a place. */
export function isDrawn(project: Project): boolean {
  const tables = [
    project.fenceLine,
    project.post,
    project.energiser,
    project.service,
    project.paddock,
    project.reading,
  ];
  return tables.some(({ size }) => size > 0);
}
