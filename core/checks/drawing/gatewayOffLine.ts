import { deleteThings } from '../../model/edits/deleteThings.ts';
import { moveGateway } from '../../model/edits/moveGateway.ts';
import { refTo } from '../../model/refTo.ts';
import type { Gateway } from '../../model/things.ts';
import type { LineShape } from '../../shapes/types.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** A gateway that reaches past an end of its line, or whose line is missing. */
export const gatewayOffLine: Check = ({ project, survey }) =>
  survey.network.problems.flatMap(({ code, thingIds, at, lengthM }) => {
    const gateway = project.gateway.get(thingIds[0]!);
    if (!gateway) return [];
    if (code === 'gatewayWithoutLine' && !project.fenceLine.has(gateway.lineId)) {
      return finding('gatewayOffLine', 'error', [gateway.id], {
        message: message('checks.gatewayOffLine.noLine', { thing: refTo(gateway) }),
        remedy: message('checks.gatewayOffLine.noLineRemedy'),
        fixes: [
          {
            label: message('checks.gatewayOffLine.noLineFix'),
            edit: deleteThings([{ kind: 'gateway', id: gateway.id }]),
            deletes: true,
          },
        ],
      });
    }
    const shape = survey.lines.get(gateway.lineId);
    if (code !== 'gatewayBeyondLine' || !shape) return [];
    return finding('gatewayOffLine', 'error', [gateway.id], {
      message: message('checks.gatewayOffLine.message', {
        thing: refTo(gateway),
        line: refTo(shape.line),
        pastM: lengthM ?? 0,
      }),
      remedy: message('checks.gatewayOffLine.remedy'),
      at,
      fixes: [
        {
          label: message('checks.gatewayOffLine.fix'),
          edit: moveGateway({ gatewayId: gateway.id, atM: fitted(gateway, shape) }),
        },
      ],
    });
  });

function fitted({ atM, widthM }: Gateway, { lengthM }: LineShape): number {
  return Math.min(lengthM - widthM / 2, Math.max(widthM / 2, atM));
}
