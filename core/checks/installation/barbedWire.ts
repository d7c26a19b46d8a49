import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding, standard } from '../support/make.ts';

/** Live and barbed wire in one fence. Which wire is which the drawing cannot tell, so it asks. */
export const barbedWire: Check = ({ project }) =>
  [...project.fenceType.values()].flatMap((type) => {
    if (type.barbedWires === 0) return [];
    const lines = [...project.fenceLine.values()].filter(({ live, typeId }) => live && typeId === type.id);
    if (lines.length === 0) return [];
    return finding('barbedWire', 'warning', [type.id], {
      message: message('checks.barbedWire.message', {
        type: type.name,
        lines: lines.map(({ name }) => name),
      }),
      remedy: message('checks.barbedWire.remedy'),
      source: standard,
      at: lines[0]!.path[0] ?? null,
    });
  });
