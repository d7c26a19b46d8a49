import { type Project, putAll } from '../project.ts';
import type { LonLat, Thing } from '../things.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { joins } from './support/joins.ts';
import { whyNotPoint } from './support/whyNotPath.ts';

/** Kinds that stand at one point of their own. */
export type PointKind = 'post' | 'energiser' | 'earthField' | 'paddock' | 'reading';

export interface MoveThing {
  readonly kind: PointKind;
  readonly id: string;
  readonly to: LonLat;
}

/** Moves a thing that stands at a point. An energiser takes the near ends of its lead-outs along. */
export function moveThing(wanted: MoveThing): Edit {
  return guarded(whyNotMoveThing(wanted), (project) => {
    const thing = found(project, wanted.kind, wanted.id);
    const moved = { ...thing, at: wanted.to } as Thing;
    return putAll(project, [moved, ...(thing.kind === 'energiser' ? leadOutsFrom(project, thing, wanted.to) : [])]);
  });
}

/** `notFound`, `outOfRange`, `tooFar`. */
export function whyNotMoveThing({ kind, id, to }: MoveThing): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, kind, id),
      () => whyNotPoint(project, to),
    );
}

function leadOutsFrom(project: Project, from: { id: string; at: LonLat }, to: LonLat): Thing[] {
  return [...project.leadOut.values()]
    .filter(({ energiserId, path }) => energiserId === from.id && joins(project, path[0]!, from.at))
    .map((leadOut) => ({ ...leadOut, path: leadOut.path.with(0, to) }));
}
