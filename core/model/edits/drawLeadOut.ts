import { message } from '../../words/message.ts';
import { nextName } from '../names.ts';
import { type Project, put } from '../project.ts';
import type { LeadOut, LonLat } from '../things.ts';
import { whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type NewId, type Refusal, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { joins, touching } from './support/joins.ts';
import { withoutDoubles } from './support/path.ts';
import { whyNotPath } from './support/whyNotPath.ts';

export interface DrawLeadOut {
  readonly energiserId: string;
  /** From beside the energiser to the fence; the energiser's own place is put in front where it is missing. */
  readonly path: readonly LonLat[];
  readonly cableId?: string;
  readonly buried?: boolean;
  readonly name?: string;
}

/** Draws the insulated cable from an energiser to a live fence line. */
export function drawLeadOut(wanted: DrawLeadOut, newId: NewId): Edit {
  return guarded(whyNotDrawLeadOut(wanted), (project) => {
    const { energiserId, cableId = 'cable-steel-2.5', buried = true } = wanted;
    const name = wanted.name ?? nextName(project, 'leadOut');
    const path = wholePath(project, wanted);
    const leadOut: LeadOut = {
      kind: 'leadOut',
      id: newId('leadOut'),
      name,
      energiserId,
      path,
      cableId,
      buried,
      status: 'planned',
      note: '',
    };
    return put(project, leadOut);
  });
}

/** `notFound`, what `whyNotPath` refuses, `notValid`, `touchesNothing`. */
export function whyNotDrawLeadOut(wanted: DrawLeadOut): WhyNot {
  const { energiserId, path: _, ...fields } = wanted;
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'energiser', energiserId),
      () => whyNotPath(project, wholePath(project, wanted), 'leadOut'),
      () => whyNotFields(project, 'leadOut', null, fields),
      () => whyNotTouching(project, wanted.path.at(-1)!),
    );
}

function wholePath(project: Project, { energiserId, path }: DrawLeadOut): LonLat[] {
  const { at } = found(project, 'energiser', energiserId);
  const first = path[0];
  return withoutDoubles(project, first && joins(project, at, first) ? [at, ...path.slice(1)] : [at, ...path]);
}

function whyNotTouching(project: Project, end: LonLat): Refusal | null {
  for (const line of project.fenceLine.values()) {
    if (!line.live) continue;
    for (let i = 0; i + 1 < line.path.length; i++) {
      if (touching(project, line.path[i]!, line.path[i + 1]!)(end) !== null) return null;
    }
  }
  return { code: 'touchesNothing', message: message('edits.leadOutTouchesNothing') };
}
