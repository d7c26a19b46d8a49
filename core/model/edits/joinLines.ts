import { message } from '../../words/message.ts';
import { type Project, put, putAll, removeAll } from '../project.ts';
import { builtMarkId } from '../recordDefaults.ts';
import { refTo } from '../refTo.ts';
import type { FenceLine } from '../things.ts';
import { withDependants } from './deleteThings.ts';
import { carryAlong, type Stretch } from './support/carryAlong.ts';
import { type Edit, firstRefusal, guarded, type Refusal, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { joins } from './support/joins.ts';
import { type Path, pathIn } from './support/path.ts';

export interface JoinLines {
  /** The line that stays. */
  readonly lineId: string;
  /** The line that becomes part of it. */
  readonly otherId: string;
}

/**
 * Makes one line of two that meet end to end; what stands on the other goes with it, and so do its photos and, where the
 * line that stays has none, the mark of when it was built. Its place in a stage goes: the line that stays has its own.
 */
export function joinLines(wanted: JoinLines): Edit {
  return guarded(whyNotJoinLines(wanted), (project) => {
    const line = found(project, 'fenceLine', wanted.lineId);
    const other = found(project, 'fenceLine', wanted.otherId);
    const meeting = meetingOf(project, line, other)!;
    const forward = meeting.turnOther ? other.path.toReversed() : other.path;
    const path = meeting.otherFirst ? [...forward.slice(0, -1), ...line.path] : [...line.path, ...forward.slice(1)];
    const joined = put(project, { ...line, path });
    const carried = carryBoth(joined, line, other, path, meeting);
    return withoutOther(carried, line, other);
  });
}

/** `notFound`, `sameLine`, `apart`, `closed`, `differ` (fence type, live or not, status). */
export function whyNotJoinLines({ lineId, otherId }: JoinLines): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'fenceLine', lineId),
      () => whyNotFound(project, 'fenceLine', otherId),
      () => whyNotPair(project, found(project, 'fenceLine', lineId), found(project, 'fenceLine', otherId)),
    );
}

function whyNotPair(project: Project, line: FenceLine, other: FenceLine): Refusal | null {
  if (line.id === other.id) return { code: 'sameLine', message: message('edits.lines.same') };
  const closed = [line, other].find(({ path }) => pathIn(project, path).closed);
  if (closed) return { code: 'closed', message: message('edits.lines.closedJoin', { line: refTo(closed) }) };
  const both = { thing: refTo(line), other: refTo(other) };
  if (!meetingOf(project, line, other)) return { code: 'apart', message: message('edits.lines.apart', both) };
  const by = (
    [
      line.typeId === other.typeId ? null : 'types',
      line.live === other.live ? null : 'live',
      line.status === other.status ? null : 'states',
    ] as const
  ).filter((what) => what !== null);
  if (by.length === 0) return null;
  return { code: 'differ', message: message('edits.lines.differ', { ...both, by }) };
}

function withoutOther(project: Project, line: FenceLine, other: FenceLine): Project {
  const photos = [...project.photo.values()].filter(({ of }) => of?.kind === 'fenceLine' && of.id === other.id);
  const mark = project.builtMark.get(builtMarkId('fenceLine', other.id));
  const markId = builtMarkId('fenceLine', line.id);
  const movesMark = mark && !project.builtMark.has(markId);
  const gone = removeAll(project, withDependants(project, [other]));
  return putAll(gone, [
    ...photos.map((photo) => ({ ...photo, of: { kind: 'fenceLine' as const, id: line.id } })),
    ...(movesMark ? [{ ...mark, id: markId, thingId: line.id, planned: null }] : []),
  ]);
}

interface Meeting {
  /** The other line comes before this one. */
  readonly otherFirst: boolean;
  readonly turnOther: boolean;
}

function meetingOf(project: Project, line: FenceLine, other: FenceLine): Meeting | null {
  const [start, end] = [line.path[0]!, line.path.at(-1)!];
  const [otherStart, otherEnd] = [other.path[0]!, other.path.at(-1)!];
  if (joins(project, end, otherStart)) return { otherFirst: false, turnOther: false };
  if (joins(project, end, otherEnd)) return { otherFirst: false, turnOther: true };
  if (joins(project, start, otherEnd)) return { otherFirst: true, turnOther: false };
  if (joins(project, start, otherStart)) return { otherFirst: true, turnOther: true };
  return null;
}

function carryBoth(project: Project, line: FenceLine, other: FenceLine, path: Path, meeting: Meeting): Project {
  const { otherFirst, turnOther } = meeting;
  const lineM = pathIn(project, line.path).lengthM;
  const oldOtherM = pathIn(project, other.path).lengthM;
  const { stationsM: newStationsM, lengthM } = pathIn(project, path);
  const otherSegments = other.path.length - 1;
  const seamM = newStationsM[otherFirst ? otherSegments : line.path.length - 1]!;
  const place = (first: boolean) => (first ? { newFromM: 0, newToM: seamM } : { newFromM: seamM, newToM: lengthM });
  const lineStretch: Stretch = { fromM: 0, toM: lineM, lineId: line.id, ...place(!otherFirst) };
  const ahead = place(otherFirst);
  const turned = turnOther ? { newFromM: ahead.newToM, newToM: ahead.newFromM } : ahead;
  const otherStretch: Stretch = { fromM: 0, toM: oldOtherM, lineId: line.id, ...turned };
  const lineShift = otherFirst ? otherSegments : 0;
  const otherShift = otherFirst ? 0 : line.path.length - 1;
  const carried = carryAlong(project, {
    line,
    stretches: [lineStretch],
    vertexTo: (index) => ({ lineId: line.id, index: index + lineShift }),
  });
  return carryAlong(carried, {
    line: other,
    stretches: [otherStretch],
    vertexTo: (index) => ({ lineId: line.id, index: otherShift + (turnOther ? otherSegments - index : index) }),
  });
}
