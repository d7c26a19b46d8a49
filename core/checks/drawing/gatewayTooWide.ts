import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** A gateway as wide as its whole line, or one whose figures make no opening. */
export const gatewayTooWide: Check = ({ project, survey }) =>
  survey.network.problems.flatMap(({ code, thingIds, at, lengthM }) => {
    if (code !== 'gatewayWiderThanLine' && code !== 'gatewayWithoutWidth') return [];
    const gateway = project.gateway.get(thingIds[0]!);
    const line = gateway && project.fenceLine.get(gateway.lineId);
    if (!line) return [];
    const names = { thing: refTo(gateway), line: refTo(line) };
    return finding('gatewayTooWide', 'error', [gateway.id], {
      message:
        code === 'gatewayWithoutWidth'
          ? message('checks.gatewayTooWide.noOpening', names)
          : message('checks.gatewayTooWide.message', { ...names, widthM: gateway.widthM, lineM: lengthM ?? 0 }),
      remedy: message('checks.gatewayTooWide.remedy'),
      at,
    });
  });
