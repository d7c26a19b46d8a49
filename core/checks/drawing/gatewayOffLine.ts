import { deleteThings } from '../../model/edits/deleteThings.ts';
import { moveGateway } from '../../model/edits/moveGateway.ts';
import { called } from '../../model/edits/support/find.ts';
import type { Gateway } from '../../model/things.ts';
import type { LineShape } from '../../shapes/types.ts';
import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

/** A gateway that reaches past an end of its line, or whose line is missing. */
export const gatewayOffLine: Check = ({ project, survey, say }) =>
  survey.network.problems.flatMap(({ code, thingIds, at, lengthM }) => {
    const gateway = project.gateway.get(thingIds[0]!);
    if (!gateway) return [];
    if (code === 'gatewayWithoutLine' && !project.fenceLine.has(gateway.lineId)) {
      return finding('gatewayOffLine', 'error', [gateway.id], {
        message: `${headed(gateway)} stands on a fence line that is not there.`,
        remedy: 'Delete it and place it again on the right line.',
        fixes: [
          { label: 'Delete the gateway', edit: deleteThings([{ kind: 'gateway', id: gateway.id }]), deletes: true },
        ],
      });
    }
    const shape = survey.lines.get(gateway.lineId);
    if (code !== 'gatewayBeyondLine' || !shape) return [];
    return finding('gatewayOffLine', 'error', [gateway.id], {
      message: `${headed(gateway)} reaches ${say(lengthM ?? 0)} past the end of ${called(shape.line)}.`,
      remedy: 'Move it along the line, or make it narrower.',
      at,
      fixes: [
        { label: 'Move it onto the line', edit: moveGateway({ gatewayId: gateway.id, atM: fitted(gateway, shape) }) },
      ],
    });
  });

function fitted({ atM, widthM }: Gateway, { lengthM }: LineShape): number {
  return Math.min(lengthM - widthM / 2, Math.max(widthM / 2, atM));
}
