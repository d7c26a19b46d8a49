import type { Project } from '../../model/project.ts';

/** "Plan A", "Plan B" and so on: the first that is free. */
export function nameNewKeptPlan(project: Project): string {
  const taken = new Set([...project.keptPlan.values()].map(({ name }) => name));
  for (let n = 0; ; n++) {
    const name = `Plan ${n < 26 ? String.fromCharCode(65 + n) : n + 1}`;
    if (!taken.has(name)) return name;
  }
}
