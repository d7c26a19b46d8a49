import { currentsAt } from '../../electrical/solver/currents.ts';
import type { Power } from './types.ts';

/** What each section leaks with the switches as they normally stand, by the growth entered: amperes at the peak. */
export function sectionLeaks({ survey, supplies }: Power): Float64Array {
  const leakA = new Float64Array(survey.sections.length);
  for (const { circuit, prepared, edgeOfSpan } of supplies) {
    const { asIs, branches } = prepared;
    if (!asIs.ok) continue;
    const { spanFromA, spanToA } = currentsAt(circuit, branches, asIs.nodeVoltageV, asIs.sourceCurrentA);
    for (const [span, edge] of edgeOfSpan.entries()) {
      const section = survey.sectionOfEdge[edge]!;
      if (section >= 0) leakA[section]! += spanFromA[span]! + spanToA[span]!;
    }
  }
  return leakA;
}
