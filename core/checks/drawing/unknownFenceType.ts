import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** A line whose fence type is missing, or a live line whose type has no live wire. */
export const unknownFenceType: Check = ({ project }) =>
  [...project.fenceLine.values()].flatMap((line) => {
    const type = project.fenceType.get(line.typeId);
    if (type && (!line.live || type.liveWires > 0)) return [];
    const at = line.path[0] ?? null;
    if (!type) {
      return finding('unknownFenceType', 'error', [line.id], {
        message: message('checks.unknownFenceType.missing', { thing: refTo(line) }),
        remedy: message('checks.unknownFenceType.missingRemedy'),
        at,
      });
    }
    return finding('unknownFenceType', 'error', [line.id], {
      message: message('checks.unknownFenceType.noLiveWire', { thing: refTo(line), type: type.name }),
      remedy: message('checks.unknownFenceType.noLiveWireRemedy'),
      at,
    });
  });
