import type { Project } from '../../model/project.ts';
import { plainWords } from '../../words/figures.ts';

/** "Plan A", "Plan B" and so on: the first that is free. */
export function nameNewKeptPlan(project: Project): string {
  const taken = new Set([...project.keptPlan.values()].map(({ name }) => name));
  for (let n = 0; ; n++) {
    const name = plainWords().order.plan({ mark: n < 26 ? String.fromCharCode(65 + n) : String(n + 1) });
    if (!taken.has(name)) return name;
  }
}
