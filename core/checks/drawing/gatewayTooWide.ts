import { called } from '../../model/edits/support/find.ts';
import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

/** A gateway as wide as its whole line, or one whose figures make no opening. */
export const gatewayTooWide: Check = ({ project, survey, say }) =>
  survey.network.problems.flatMap(({ code, thingIds, at, lengthM }) => {
    if (code !== 'gatewayWiderThanLine' && code !== 'gatewayWithoutWidth') return [];
    const gateway = project.gateway.get(thingIds[0]!);
    const line = gateway && project.fenceLine.get(gateway.lineId);
    if (!line) return [];
    const message =
      code === 'gatewayWithoutWidth'
        ? `${headed(gateway)} makes no opening: its width or its place along ${called(line)} is not a usable figure, or it lies beyond the line's end.`
        : `${headed(gateway)} is ${say(gateway.widthM)} wide, and ${called(line)} only ${say(lengthM ?? 0)} long.`;
    return finding('gatewayTooWide', 'error', [gateway.id], {
      message,
      remedy: 'Make the gateway narrower, the line longer, or move the gateway to another line.',
      at,
    });
  });
