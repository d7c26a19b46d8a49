import { lonLatAt, type MeasuredPath, placeAt } from '../../shapes/measuredPath.ts';
import { message } from '../../words/message.ts';
import { nextName } from '../names.ts';
import { type Project, put, putAll } from '../project.ts';
import { builtMarkId, stageMarkId } from '../recordDefaults.ts';
import { refTo } from '../refTo.ts';
import type { FenceLine, Thing } from '../things.ts';
import { carryAlong, type Stretch } from './support/carryAlong.ts';
import { type Edit, firstRefusal, guarded, type NewId, type Refusal, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { pathIn, sameVertexM } from './support/path.ts';
import { whyNotStation } from './support/switchPlace.ts';

export interface SplitLine {
  readonly lineId: string;
  /** A vertex's own station splits at that vertex. */
  readonly atM: number;
}

/**
 * Splits a line in two: the first piece stays the same line, the second is a new one of the same kind; what stands on
 * the line goes with its piece, and both were built when it was and stay in its stage. A closed line stays one line and opens there: it begins and ends at the place.
 */
export function splitLine(wanted: SplitLine, newId: NewId): Edit {
  return guarded(whyNotSplitLine(wanted), (project) => {
    const line = found(project, 'fenceLine', wanted.lineId);
    return pathIn(project, line.path).closed
      ? openRing(project, line, wanted.atM)
      : cutInTwo(project, line, wanted.atM, newId);
  });
}

/** `notFound`, `offLine`, `insideGateway`, `atEnd`. */
export function whyNotSplitLine({ lineId, atM }: SplitLine): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'fenceLine', lineId),
      () => whyNotStation(project, lineId, atM),
      () => whyNotInside(project, found(project, 'fenceLine', lineId), atM),
    );
}

function whyNotInside(project: Project, line: FenceLine, atM: number): Refusal | null {
  const { lengthM, closed } = pathIn(project, line.path);
  if (closed || (atM > sameVertexM && atM < lengthM - sameVertexM)) return null;
  return { code: 'atEnd', message: message('edits.lines.atEnd', { line: refTo(line), lengthM }) };
}

interface Cut {
  /** The path with a vertex at the cut. */
  readonly path: FenceLine['path'];
  readonly vertex: number;
  /** Where a vertex of the old path is in `path`. */
  readonly shifted: (index: number) => number;
}

function cutAt(whole: MeasuredPath, atM: number): Cut {
  const { path, stationsM } = whole;
  const there = stationsM.findIndex((stationM) => Math.abs(stationM - atM) <= sameVertexM);
  if (there >= 0) return { path, vertex: there, shifted: (index) => index };
  const { segment } = placeAt(whole, atM);
  const point = lonLatAt(whole, atM);
  const shifted = (index: number) => (index <= segment ? index : index + 1);
  return { path: path.toSpliced(segment + 1, 0, point), vertex: segment + 1, shifted };
}

function cutInTwo(project: Project, line: FenceLine, atM: number, newId: NewId): Project {
  const whole = pathIn(project, line.path);
  const { path, vertex, shifted } = cutAt(whole, atM);
  const first = { ...line, path: path.slice(0, vertex + 1) };
  const second = { ...line, id: newId('fenceLine'), name: nextName(project, 'fenceLine'), path: path.slice(vertex) };
  const firstM = pathIn(project, first.path).lengthM;
  const secondM = pathIn(project, second.path).lengthM;
  const stretches: Stretch[] = [
    { fromM: 0, toM: firstM, lineId: first.id, newFromM: 0, newToM: firstM },
    { fromM: firstM, toM: whole.lengthM, lineId: second.id, newFromM: 0, newToM: secondM },
  ];
  const vertexTo = (index: number) => {
    const now = shifted(index);
    if (now === vertex) return null;
    return now < vertex ? { lineId: first.id, index: now } : { lineId: second.id, index: now - vertex };
  };
  const cut = putAll(project, [first, second, ...marksOfPiece(project, line, second)]);
  return carryAlong(cut, { line, stretches, vertexTo });
}

/** The second piece was built when the line was, and is in its stage; what was planned stays with the first. */
function marksOfPiece(project: Project, line: FenceLine, { id }: FenceLine): Thing[] {
  const mark = project.builtMark.get(builtMarkId('fenceLine', line.id));
  const stage = project.stageMark.get(stageMarkId(line.id));
  return [
    ...(mark ? [{ ...mark, id: builtMarkId('fenceLine', id), thingId: id, planned: null }] : []),
    ...(stage ? [{ ...stage, id: stageMarkId(id), thingId: id }] : []),
  ];
}

/** The same ring, begun and ended at another place; its two ends still touch there. */
function openRing(project: Project, line: FenceLine, atM: number): Project {
  const whole = pathIn(project, line.path);
  const { path, vertex, shifted } = cutAt(whole, atM);
  const last = path.length - 1;
  if (vertex === 0 || vertex === last) return project;
  const turned = [...path.slice(vertex), ...path.slice(1, vertex + 1)];
  const { lengthM } = whole;
  const turnedM = pathIn(project, turned).lengthM;
  const cutM = Math.min(lengthM, Math.max(0, atM));
  const stretches: Stretch[] = [
    { fromM: 0, toM: cutM, lineId: line.id, newFromM: turnedM - cutM, newToM: turnedM },
    { fromM: cutM, toM: lengthM, lineId: line.id, newFromM: 0, newToM: turnedM - cutM },
  ];
  const vertexTo = (index: number) => {
    const now = shifted(index) % last;
    return now === vertex ? null : { lineId: line.id, index: (now - vertex + last) % last };
  };
  return carryAlong(put(project, { ...line, path: turned }), { line, stretches, vertexTo });
}
