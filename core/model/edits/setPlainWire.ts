import { put } from '../project.ts';
import type { FenceType } from '../things.ts';
import { whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';

export interface SetPlainWire {
  readonly typeId: string;
  /** Id of a conductor; null: the same as the live wires. */
  readonly wireId: string | null;
}

/** Says what the earth and plain wires of a fence type are made of. */
export function setPlainWire(wanted: SetPlainWire): Edit {
  return guarded(whyNotSetPlainWire(wanted), (project) => {
    const type = found(project, 'fenceType', wanted.typeId);
    const { plainWireId, ...without } = type;
    if ((plainWireId ?? null) === wanted.wireId) return project;
    return put(
      project,
      wanted.wireId === null ? without : ({ ...type, plainWireId: wanted.wireId } satisfies FenceType),
    );
  });
}

/** `notFound`, `notValid`. */
function whyNotSetPlainWire({ typeId, wireId }: SetPlainWire): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'fenceType', typeId),
      () => (wireId === null ? null : whyNotFields(project, 'fenceType', typeId, { plainWireId: wireId })),
    );
}
