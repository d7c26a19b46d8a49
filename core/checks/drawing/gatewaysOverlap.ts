import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** Two gateways may share a post; a millimetre is no overlap. */
const slackM = 0.001;

/** Two gateways of one line that share a stretch of it. */
export const gatewaysOverlap: Check = ({ openings }) => {
  const findings = [];
  for (const onLine of openings.values()) {
    for (const [i, shape] of onLine.entries()) {
      for (const other of onLine.slice(i + 1)) {
        const overlapM = Math.min(shape.toM, other.toM) - other.fromM;
        if (other.fromM >= shape.toM) break;
        if (overlapM <= slackM) continue;
        findings.push(
          finding('gatewaysOverlap', 'error', [shape.gateway.id, other.gateway.id], {
            message: message('checks.gatewaysOverlap.message', {
              thing: refTo(shape.gateway),
              other: refTo(other.gateway),
              overlapM,
            }),
            remedy: message('checks.gatewaysOverlap.remedy'),
            at: other.startPostAt,
          }),
        );
      }
    }
  }
  return findings;
};
