import type { Project } from '../../model/project.ts';

/** Whether a property has lines, posts or anything else with a place; also what was left in the ground. */
export function isDrawn(project: Project): boolean {
  const tables = [
    project.fenceLine,
    project.post,
    project.energiser,
    project.service,
    project.paddock,
    project.reading,
    project.buriedPoint,
    project.inGround,
  ];
  return tables.some(({ size }) => size > 0);
}
