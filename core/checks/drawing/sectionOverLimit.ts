import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { commonPractice, finding } from '../support/make.ts';

/** A section with more fence, or more gateways, than the property's limits allow. */
export const sectionOverLimit: Check = ({ project, survey, property }) => {
  const { maxSectionM, maxGateways } = property.divide;
  return survey.sections.flatMap(({ letter, lengthM, overByM, overByGateways, gatewayIds, lineIds, labelXy }) => {
    if (overByM === null && overByGateways === null) return [];
    const lines = lineIds.map((id) => project.fenceLine.get(id)?.name ?? id);
    return finding('sectionOverLimit', 'warning', lineIds, {
      message: message('checks.sectionOverLimit.message', {
        letter,
        lines,
        length: overByM === null ? null : { isM: lengthM, overByM, limitM: maxSectionM },
        gateways: overByGateways === null ? null : { count: gatewayIds.length, limit: maxGateways! },
      }),
      remedy: message('checks.sectionOverLimit.remedy'),
      source: commonPractice,
      at: survey.plane.toLonLat(labelXy),
    });
  });
};
