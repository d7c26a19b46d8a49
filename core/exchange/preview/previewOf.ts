import { type Message, message } from '../../words/message.ts';
import { boundsOf } from './bounds.ts';
import { groupsOf, isNoFix } from './groups.ts';
import { oursOf } from './ours.ts';
import { type Part, type Parts, partsOf } from './parts.ts';
import { type PositionReader, positionReader } from './positions.ts';
import { isObject, own, type RawObject, shown } from './raw.ts';
import { refuse } from './refuse.ts';
import { figureOf, type Noun, nameOf, possibleOf, suggestionFor, unnamed } from './suggest.ts';
import { swapSuspicion } from './swapSuspicion.ts';
import type { FeatureProblem, PreviewFeature, ReadOptions, ReadResult } from './types.ts';

/** What the reader of a format makes of a file: features as GeoJSON has them, whatever the file was. */
export interface RawFile {
  /** What one piece of such a file is called. */
  readonly noun: Noun;
  /**
   * Each should be a GeoJSON feature; one that is not is told of. `track: true` beside `geometry`: the line is the
   * way of a receiver.
   */
  readonly features: readonly unknown[];
  /** What the reader itself had to leave out. */
  readonly problems?: readonly FeatureProblem[];
  readonly notes?: readonly Message[];
}

const mostFeatures = 500_000;
const mostProblems = 1000;
const featuresBetweenNews = 2000;

/** Looks through the features of a file before anything is taken over; one that can't be used is told of. */
export function previewOf(file: RawFile, { swap = false, nearTo = null, progress }: ReadOptions = {}): ReadResult {
  const { features: raw, noun } = file;
  if (raw.length > mostFeatures) {
    const tooMany = message('exchange.file.tooManyPieces', { pieces: raw.length, most: mostFeatures });
    return refuse(tooMany, message('exchange.remedy.splitOrLeave'));
  }
  const reading: Reading = {
    noun,
    reader: positionReader(swap),
    features: [],
    problems: [...(file.problems ?? [])],
    withoutFix: 0,
  };
  for (const [index, feature] of raw.entries()) {
    readFeature(reading, feature, index);
    if (index % featuresBetweenNews === 0) progress?.(index / raw.length);
  }
  const { features, problems, reader } = reading;
  const bounds = boundsOf(features);
  const groups = groupsOf(features);
  const notes = [...(file.notes ?? []), ...notesOn(reading)];
  const looksSwapped = swap ? null : swapSuspicion(reader, groups, nearTo);
  return {
    ok: true,
    preview: { features, problems: problems.slice(0, mostProblems), notes, bounds, groups, looksSwapped },
  };
}

interface Reading {
  readonly noun: Noun;
  readonly reader: PositionReader;
  readonly features: PreviewFeature[];
  readonly problems: FeatureProblem[];
  /** Positions of lines at latitude 0, longitude 0 that were left out. */
  withoutFix: number;
}

function readFeature(reading: Reading, raw: unknown, index: number): void {
  const { noun, reader, features, problems } = reading;
  if (!isObject(raw) || own(raw, 'type') !== 'Feature') {
    const why = isObject(raw)
      ? message('exchange.piece.otherType', { type: shown(own(raw, 'type')) })
      : message('exchange.piece.notFeature', { what: shown(raw) });
    problems.push({ index, name: unnamed(noun, index), why, whatToDo: message('exchange.remedy.fixOrLeave') });
    return;
  }
  const given = own(raw, 'properties');
  const properties: RawObject = isObject(given) ? given : {};
  const name = nameOf(properties, own(raw, 'id'), index, noun);
  const read = oursOf(properties);
  if (read.is === 'computed') return;
  if (read.is === 'unreadable') {
    problems.push({ index, name, why: read.why, whatToDo: read.whatToDo });
    return;
  }
  const [ours = null, ...more] = read.is === 'things' ? read.things : [];
  // What an older version held within the thing; its place is the thing's own.
  for (const [i, other] of more.entries()) {
    features.push({ ...bare(`${index}+${i + 1}`, index, name, properties), ours: other });
  }
  const geometry = own(raw, 'geometry');
  if (geometry === null || geometry === undefined) {
    if (ours) features.push({ ...bare(String(index), index, name, properties), ours });
    else {
      const whatToDo = message('exchange.remedy.drawOrLeave');
      problems.push({ index, name, why: message('exchange.piece.noGeometry'), whatToDo });
    }
    return;
  }
  const { parts, faults }: Parts = partsOf(geometry, reader);
  for (const why of faults) problems.push({ index, name, why, whatToDo: remedyFor(why) });
  if (ours) {
    // Of a crossing every way that it may run is shown; where it lies stands in its record.
    if (parts.length > 1 && parts[0]!.shape === 'line' && ours.kind !== 'crossing' && ours.kind !== 'inGround') {
      const whatToDo = message('exchange.remedy.joinPieces');
      problems.push({ index, name, why: message('exchange.piece.inPieces'), whatToDo });
    } else if (parts.length > 0 && faults.length === 0)
      features.push(oursWith(ours, parts[0]!, index, name, properties));
    return;
  }
  const track = own(raw, 'track') === true;
  for (const [i, whole] of parts.entries()) {
    const part = withFixOnly(whole);
    reading.withoutFix += whole.path.length - part.path.length;
    const key = parts.length > 1 ? `${index}.${i}` : String(index);
    const partName = parts.length > 1 ? `${name} (${i + 1})` : name;
    const suggestion = suggestionFor(part.shape, properties, track);
    const possible = possibleOf[part.shape];
    const withHeights = part.heightsM && part.shape !== 'point' ? ([...possible, 'heights'] as const) : possible;
    features.push({ ...bare(key, index, partName, properties), ...part, track, suggestion, possible: withHeights });
  }
}

/** Further than this from latitude 0, longitude 0, no line passes there on purpose. */
const nowhereNearDeg = 1;

/** A line without the positions that a receiver wrote while it had no fix, where the rest is left as a line. */
function withFixOnly(part: Part): Part {
  const { shape, path, heightsM } = part;
  if (shape === 'point' || !path.some(isNoFix)) return part;
  const keep = path.map((position) => !isNoFix(position));
  const kept = path.filter((_, i) => keep[i]);
  const isElsewhere = kept.every(([lon, lat]) => Math.abs(lon) > nowhereNearDeg || Math.abs(lat) > nowhereNearDeg);
  const fewest = shape === 'outline' ? 4 : 2;
  if (!isElsewhere || kept.length < fewest) return part;
  const keptM = heightsM?.filter((_, i) => keep[i]) ?? null;
  const [first, last] = [kept[0]!, kept.at(-1)!];
  if (shape === 'line' || (first[0] === last[0] && first[1] === last[1])) return { shape, path: kept, heightsM: keptM };
  return { shape, path: [...kept, first], heightsM: keptM && [...keptM, keptM[0]!] };
}

function bare(key: string, index: number, name: string, properties: RawObject): PreviewFeature {
  return {
    key,
    index,
    name,
    shape: 'none',
    path: [],
    heightsM: null,
    track: false,
    suggestion: 'leaveOut',
    possible: possibleOf.none,
    ours: null,
    widthM: figureOf(properties, ['width', 'widthm', 'gatewidth'], 'm', [0.5, 100]),
    voltageV: figureOf(properties, ['voltage', 'voltagev', 'volts'], 'V', [1, 2_000_000]),
  };
}

function oursWith(
  ours: PreviewFeature['ours'],
  { shape, path }: Part,
  index: number,
  name: string,
  properties: RawObject,
): PreviewFeature {
  return { ...bare(String(index), index, name, properties), shape, path, ours };
}

function remedyFor({ code }: Message): Message {
  if (code === 'exchange.piece.notOnEarth') return message('exchange.remedy.checkCoordinates');
  return message('exchange.remedy.fixOrLeaveThere');
}

function notesOn({ reader, problems: { length: problems }, withoutFix }: Reading): Message[] {
  const notes: Message[] = [];
  if (withoutFix > 0) notes.push(message('exchange.note.withoutFix', { positions: withoutFix }));
  if (reader.seen.wrapped) notes.push(message('exchange.note.wrapped'));
  if (problems > mostProblems) notes.push(message('exchange.note.firstProblems', { listed: mostProblems, problems }));
  return notes;
}
