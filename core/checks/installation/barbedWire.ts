import type { Check } from '../support/context.ts';
import { finding, listed, standard } from '../support/make.ts';

/** Live and barbed wire in one fence. Which wire is which the drawing cannot tell, so it asks. */
export const barbedWire: Check = ({ project }) =>
  [...project.fenceType.values()].flatMap((type) => {
    if (type.barbedWires === 0) return [];
    const lines = [...project.fenceLine.values()].filter(({ live, typeId }) => live && typeId === type.id);
    if (lines.length === 0) return [];
    return finding('barbedWire', 'warning', [type.id], {
      message: `"${type.name}" has barbed wire, and ${listed(lines.map(({ name }) => name))} of this type ${lines.length > 1 ? 'are' : 'is'} live. Barbed or razor wire is never electrified.`,
      remedy:
        'Keep every live wire on offsets at least 150 mm from the plane of the barbed wire and earth the barbed wire at regular intervals; or choose a type without it, or make the line not live.',
      source: standard,
      at: lines[0]!.path[0] ?? null,
    });
  });
