import { message } from '../../words/message.ts';
import { put } from '../project.ts';
import { refTo } from '../refTo.ts';
import type { LonLat, Thing } from '../things.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { whyNotPoint } from './support/whyNotPath.ts';

export interface MovePathVertex {
  readonly kind: 'leadOut' | 'service';
  readonly id: string;
  readonly index: number;
  readonly to: LonLat;
}

/** Moves a vertex of a lead-out or a service. A closed service stays closed. */
export function movePathVertex(wanted: MovePathVertex): Edit {
  return guarded(whyNotMovePathVertex(wanted), (project) => {
    const thing = found(project, wanted.kind, wanted.id);
    const from = thing.path[wanted.index]!;
    const last = thing.path.length - 1;
    const seam = thing.kind === 'service' && (wanted.index === 0 || wanted.index === last);
    const path = thing.path.map((vertex, i) => {
      const same = i === wanted.index || (seam && (i === 0 || i === last) && vertex.every((n, k) => n === from[k]));
      return same ? wanted.to : vertex;
    });
    return put(project, { ...thing, path } as Thing);
  });
}

/** `notFound`, `noSuchVertex`, `outOfRange`, `tooFar`. */
export function whyNotMovePathVertex({ kind, id, index, to }: MovePathVertex): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, kind, id),
      () => {
        const thing = found(project, kind, id);
        if (thing.path[index]) return null;
        return { code: 'noSuchVertex', message: message('edits.corners.gone', { thing: refTo(thing) }) };
      },
      () => whyNotPoint(project, to),
    );
}
