import type { Check } from '../support/context.ts';
import { commonPractice, finding, listed } from '../support/make.ts';

/** A section with more fence, or more gateways, than the property's limits allow. */
export const sectionOverLimit: Check = ({ project, survey, property, say }) => {
  const { maxSectionM, maxGateways } = property.divide;
  return survey.sections.flatMap(({ letter, lengthM, overByM, overByGateways, gatewayIds, lineIds, labelXy }) => {
    if (overByM === null && overByGateways === null) return [];
    const faults = [
      overByM !== null && `is ${say(lengthM)} long, ${say(overByM)} over the limit of ${say(maxSectionM)}`,
      overByGateways !== null && `has ${gatewayIds.length} gateways, over the limit of ${maxGateways}`,
    ].filter((fault) => fault !== false);
    const names = lineIds.map((id) => project.fenceLine.get(id)?.name ?? id);
    return finding('sectionOverLimit', 'warning', lineIds, {
      message: `Section ${letter} (${listed(names)}) ${faults.join(' and ')}.`,
      remedy: 'Add cut-out switches, or take over the suggested division.',
      source: commonPractice,
      at: survey.plane.toLonLat(labelXy),
    });
  });
};
