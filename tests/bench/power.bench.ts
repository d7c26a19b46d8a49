import { estimateOf } from '../../core/survey/power/estimateOf.ts';
import { lineVoltages } from '../../core/survey/power/lineVoltages.ts';
import { powerOf } from '../../core/survey/power/powerOf.ts';
import { powerTables } from '../../core/survey/power/powerTables.ts';
import { profileTo } from '../../core/survey/power/profile.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { largeProperty } from '../support/largeProperty.ts';
import { measure } from './measure.ts';
import type { BenchRow } from './row.ts';

const runs = 10_000;

/** The Power workspace on a large property: what an edit costs, what showing a switch open costs, what is worked out beside the window. */
export function bench(): BenchRow[] {
  const project = largeProperty(runs);
  const first = surveyOf(project);
  const power = powerOf(project, first);
  const nodes = first.network.nodes.length;
  const ids = [...project.switch.keys()];
  let next = 0;
  const edited = measure(() => {
    const fresh = powerOf(project, { ...first });
    return lineVoltages(fresh, estimateOf(fresh));
  }, 20);
  const thrown = measure(() => {
    const estimate = estimateOf(power, new Set([ids[next++ % ids.length]!]));
    return lineVoltages(power, estimate);
  }, 40);
  const estimate = estimateOf(power);
  const profile = measure(() => profileTo(power, estimate, estimate.weakest!), 10);
  const tables = measure(() => powerTables(power), 2);
  return [
    { name: 'power after an edit: circuit, voltages, every fence', size: nodes, ...edited, unit: 'ms', budget: null },
    { name: 'power with a switch shown open: voltages, every fence', size: nodes, ...thrown, unit: 'ms', budget: null },
    { name: 'profile to the weakest place', size: nodes, ...profile, unit: 'ms', budget: null },
    {
      name: `power beside the window: effects, ${ids.length} switches thrown`,
      size: nodes,
      ...tables,
      unit: 'ms',
      budget: null,
    },
  ];
}
