import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

/** A line whose fence type is missing, or a live line whose type has no live wire. */
export const unknownFenceType: Check = ({ project }) =>
  [...project.fenceLine.values()].flatMap((line) => {
    const type = project.fenceType.get(line.typeId);
    if (type && (!line.live || type.liveWires > 0)) return [];
    const at = line.path[0] ?? null;
    if (!type) {
      return finding('unknownFenceType', 'error', [line.id], {
        message: `${headed(line)} has a fence type that is not in this property; its wires are counted as one live wire.`,
        remedy: 'Choose a fence type for it.',
        at,
      });
    }
    return finding('unknownFenceType', 'error', [line.id], {
      message: `${headed(line)} is live, and its fence type "${type.name}" has no live wire.`,
      remedy: 'Choose a type with live wires, or make the line not live.',
      at,
    });
  });
