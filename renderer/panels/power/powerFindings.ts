import type { Finding } from '../../../core/checks/finding.ts';
import type { Power, PowerProblem } from '../../../core/survey/power/types.ts';

/** Rules of the checks that bear on whether current comes, and how much. */
const aboutPower: ReadonlySet<string> = new Set([
  'noEnergiser',
  'energiserTouchesNothing',
  'twoEnergisers',
  'leadOutLoose',
  'deadPart',
  'missingCrossing',
  'unknownFenceType',
  'barbedWire',
  'buildingWire',
  'earthElectrodeDistance',
  'earthAcrossGateway',
]);

/** What the checks say about the supply, and what the estimate is missing. */
export function powerFindings({ problems }: Power, findings: readonly Finding[]): Finding[] {
  const own = findings.filter(({ rule }) => aboutPower.has(rule));
  const said = new Set(own.map(({ rule }) => rule));
  return [...problems.filter(({ code }) => !said.has(code)).map(asFinding), ...own];
}

function asFinding({ code, weight, message, remedy, source, thingIds }: PowerProblem): Finding {
  return {
    id: `power:${code}:${thingIds.join()}`,
    rule: code,
    severity: weight === 'leftOut' && code === 'label' ? 'warning' : 'notKnown',
    message,
    remedy,
    source,
    thingIds,
    at: null,
    fixes: [],
  };
}
