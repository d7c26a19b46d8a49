import { message } from '../../words/message.ts';
import type { ThingRef } from '../../words/types.ts';
import { type Project, put } from '../project.ts';
import { refTo } from '../refTo.ts';
import type { FenceLine } from '../things.ts';
import { carryAlong } from './support/carryAlong.ts';
import { type Edit, firstRefusal, guarded, type Refusal, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { pathIn, sameVertex } from './support/path.ts';
import { relay, type SameCorner, stretchesBetween } from './support/relay.ts';

export interface DeleteVertex {
  readonly lineId: string;
  readonly index: number;
}

/** Takes a vertex out; its neighbours are joined straight. An end vertex shortens the line. */
export function deleteVertex(wanted: DeleteVertex): Edit {
  return guarded(whyNotDeleteVertex(wanted), (project) => {
    const line = found(project, 'fenceLine', wanted.lineId);
    const last = line.path.length - 1;
    const { index } = wanted;
    if (pathIn(project, line.path).closed && (index === 0 || index === last)) return deleteSeam(project, line);
    const path = line.path.toSpliced(index, 1);
    const kept = line.path.flatMap((_, i): SameCorner[] => (i === index ? [] : [[i, i < index ? i : i - 1]]));
    if (index === 0) return relay(project, line, path, [[0, 0], ...kept]);
    if (index === last) return relay(project, line, path, [...kept, [last, last - 1]]);
    return relay(project, line, path, kept);
  });
}

/** A closed line that loses the vertex where it begins begins at the next one. */
function deleteSeam(project: Project, line: FenceLine): Project {
  const before = line.path.length - 2;
  const path = [...line.path.slice(1, -1), line.path[1]!];
  const inner = Array.from({ length: before }, (_, i): SameCorner => [i + 1, i]);
  const oldM = pathIn(project, line.path).stationsM;
  const newM = pathIn(project, path).stationsM;
  const [lengthM, firstM, lastM] = [oldM.at(-1)!, oldM[1]!, oldM[before]!];
  const [seamFromM, seamToM] = [newM[before - 1]!, newM[before]!];
  const seamM = seamFromM + ((seamToM - seamFromM) * (lengthM - lastM)) / (lengthM - lastM + firstM);
  const stretches = [
    { fromM: 0, toM: firstM, lineId: line.id, newFromM: seamM, newToM: seamToM },
    ...stretchesBetween(project, line.path, line.id, path, inner),
    { fromM: lastM, toM: lengthM, lineId: line.id, newFromM: seamFromM, newToM: seamM },
  ];
  const vertexTo = (index: number) => (index === 0 || index > before ? null : { lineId: line.id, index: index - 1 });
  return carryAlong(put(project, { ...line, path }), { line, stretches, vertexTo });
}

/** `notFound`, `noSuchVertex`, `tooFewPoints`, `noLength`, `holdsThings`. */
export function whyNotDeleteVertex({ lineId, index }: DeleteVertex): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'fenceLine', lineId),
      () => whyNotVertex(found(project, 'fenceLine', lineId), index),
      () => whyNotShorter(project, found(project, 'fenceLine', lineId), index),
      () => whyNotEmptied(project, found(project, 'fenceLine', lineId), index),
    );
}

export function whyNotVertex(line: FenceLine, index: number): Refusal | null {
  if (Number.isInteger(index) && index >= 0 && index < line.path.length) return null;
  return { code: 'noSuchVertex', message: message('edits.corners.gone', { thing: refTo(line) }) };
}

function whyNotShorter(project: Project, line: FenceLine, index: number): Refusal | null {
  const { closed } = pathIn(project, line.path);
  if (line.path.length <= (closed ? 4 : 2)) {
    return { code: 'tooFewPoints', message: message('edits.corners.tooFew', { line: refTo(line), closed }) };
  }
  const before = line.path[index - 1];
  const after = line.path[index + 1];
  if (before && after && sameVertex(project, before, after)) {
    return { code: 'noLength', message: message('edits.corners.noLength', { line: refTo(line) }) };
  }
  return null;
}

/** An end piece goes with its end vertex; what stands on it has to go or move first. */
function whyNotEmptied(project: Project, line: FenceLine, index: number): Refusal | null {
  const last = line.path.length - 1;
  const { stationsM, closed } = pathIn(project, line.path);
  if ((index !== 0 && index !== last) || closed) return null;
  const goes = (fromM: number, toM: number) => (index === 0 ? fromM < stationsM[1]! : toM > stationsM[last - 1]!);
  const things: ThingRef[] = [];
  for (const gateway of project.gateway.values()) {
    const halfM = gateway.widthM / 2;
    if (gateway.lineId === line.id && goes(gateway.atM - halfM, gateway.atM + halfM)) things.push(refTo(gateway));
  }
  for (const cutOut of project.switch.values()) {
    const { place } = cutOut;
    if (place.on === 'line' && place.lineId === line.id && goes(place.atM, place.atM)) things.push(refTo(cutOut));
  }
  for (const candidate of project.switchCandidate.values()) {
    if (candidate.lineId === line.id && goes(candidate.atM, candidate.atM)) things.push(refTo(candidate));
  }
  if (things.length === 0) return null;
  const pieceM = index === 0 ? stationsM[1]! : stationsM[last]! - stationsM[last - 1]!;
  const values = { line: refTo(line), pieceM, things };
  return { code: 'holdsThings', message: message('edits.corners.holdsThings', values) };
}
