import { message } from '../../words/message.ts';
import { refTo } from '../refTo.ts';
import type { LineEnd, LonLat } from '../things.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { pathIn, withoutDoubles } from './support/path.ts';
import { relay } from './support/relay.ts';
import { whyNotPath } from './support/whyNotPath.ts';

export interface ExtendLine {
  readonly lineId: string;
  readonly end: LineEnd;
  /** The new vertices, from the line's end outward. */
  readonly onward: readonly LonLat[];
}

/** Draws a line on from one of its ends. */
export function extendLine(wanted: ExtendLine): Edit {
  return guarded(whyNotExtendLine(wanted), (project) => {
    const line = found(project, 'fenceLine', wanted.lineId);
    const { path } = line;
    const last = wanted.end === 'end' ? path.at(-1)! : path[0]!;
    const onward = withoutDoubles(project, [last, ...wanted.onward]).slice(1);
    const shift = wanted.end === 'end' ? 0 : onward.length;
    const newPath = wanted.end === 'end' ? [...path, ...onward] : [...onward.toReversed(), ...path];
    return relay(
      project,
      line,
      newPath,
      path.map((_, i) => [i, i + shift] as const),
    );
  });
}

/** `notFound`, `closed`, and what `whyNotPath` refuses. */
export function whyNotExtendLine({ lineId, end, onward }: ExtendLine): WhyNot {
  return (project) => {
    const missing = whyNotFound(project, 'fenceLine', lineId);
    if (missing) return missing;
    const line = found(project, 'fenceLine', lineId);
    if (pathIn(project, line.path).closed) {
      return { code: 'closed', message: message('edits.lines.closedOn', { line: refTo(line) }) };
    }
    const last = end === 'end' ? line.path.at(-1)! : line.path[0]!;
    return firstRefusal(() => whyNotPath(project, [last, ...onward], 'piece'));
  };
}
