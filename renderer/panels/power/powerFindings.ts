import type { Finding } from '../../../core/checks/finding.ts';
import type { Power, PowerProblem } from '../../../core/survey/power/types.ts';

/** What the checks say about the supply, and what the estimate is missing. */
export function powerFindings({ problems }: Power, findings: readonly Finding[]): Finding[] {
  const own = findings.filter(({ workspaces }) => workspaces.includes('power'));
  const said = new Set(own.map(({ rule }) => rule));
  return [...problems.filter(({ code }) => !said.has(code)).map(asFinding), ...own];
}

function asFinding({ code, weight, message, remedy, source, thingIds }: PowerProblem): Finding {
  return {
    id: `power:${code}:${thingIds.join()}`,
    rule: code,
    workspaces: ['power'],
    severity: weight === 'leftOut' && code === 'label' ? 'warning' : 'notKnown',
    message,
    remedy,
    source,
    thingIds,
    at: null,
    fixes: [],
  };
}
