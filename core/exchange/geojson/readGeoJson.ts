import { distanceM } from '../../geometry/geodesic.ts';
import type { LonLat } from '../../model/things.ts';
import { boundsOf } from './bounds.ts';
import { kindOfOurs, ourThing } from './ours.ts';
import { parseJson } from './parseJson.ts';
import { type Parts, partsOf } from './parts.ts';
import { type PositionReader, positionReader } from './positions.ts';
import { isObject, own, type RawObject, shown } from './raw.ts';
import { figureOf, nameOf, possibleOf, suggestionFor } from './suggest.ts';
import type { FeatureProblem, Preview, PreviewFeature, ReadResult } from './types.ts';

export interface ReadOptions {
  /** The file has latitude before longitude. */
  readonly swap?: boolean;
  /** Where the property is, to tell whether the file fits it; null: nowhere yet. */
  readonly nearTo?: LonLat | null;
}

const mostFeatures = 500_000;
const mostProblems = 1000;

/** Further from the property than this, a file that would lie near it with its coordinates exchanged looks exchanged. */
const farM = 500_000;

/**
 * Reads a GeoJSON text (RFC 7946) for a look before anything is taken over. A text that is no GeoJSON at all is
 * refused with the reason; a feature that can't be used is told of one by one.
 */
export function readGeoJson(text: string, { swap = false, nearTo = null }: ReadOptions = {}): ReadResult {
  const parsed = parseJson(text);
  if (!parsed.ok) return parsed;
  const raw = featuresOf(parsed.value);
  if (!Array.isArray(raw)) return raw as ReadResult;
  if (raw.length > mostFeatures) {
    const message = `The file holds ${raw.length} features; up to ${mostFeatures} can be read.`;
    return { ok: false, message, remedy: 'Split it, or leave out what is not needed.' };
  }
  const foreign = foreignSystem(parsed.value);
  if (foreign) return foreign;
  const reader = positionReader(swap);
  const features: PreviewFeature[] = [];
  const problems: FeatureProblem[] = [];
  for (const [index, feature] of raw.entries()) readFeature(feature, index, reader, features, problems);
  const bounds = boundsOf(features);
  const notes = notesOn(parsed.value, reader, problems.length);
  const looksSwapped = swap ? null : swapSuspicion(reader, bounds, nearTo);
  return {
    ok: true,
    preview: { features, problems: problems.slice(0, mostProblems), notes, bounds, looksSwapped },
  };
}

/** The features of a collection, or the one feature, or the one geometry made a feature. */
function featuresOf(value: unknown): readonly unknown[] | ReadResult {
  if (!isObject(value)) {
    return refuse(`The file holds ${shown(value)} where a GeoJSON object should be.`, 'Choose a GeoJSON file.');
  }
  const type = own(value, 'type');
  if (type === 'FeatureCollection') {
    const features = own(value, 'features');
    if (Array.isArray(features)) return features as readonly unknown[];
    return refuse(
      'The file is a FeatureCollection without a list of features.',
      'Save it again from the program that made it.',
    );
  }
  if (type === 'Feature') return [value];
  if (Object.hasOwn(value, 'coordinates') || Object.hasOwn(value, 'geometries')) {
    return [{ type: 'Feature', properties: {}, geometry: value }];
  }
  return refuse(
    `The file is JSON of the type ${shown(type)}, not GeoJSON.`,
    'Choose a file whose type is FeatureCollection, Feature or a geometry.',
  );
}

function refuse(message: string, remedy: string): ReadResult {
  return { ok: false, message, remedy };
}

const wgs84Names = /CRS84|EPSG:{1,2}(\d*:)?4326|WGS ?84/i;

/** Older files may name another coordinate system; RFC 7946 knows only WGS 84. */
function foreignSystem(value: unknown): ReadResult | null {
  const name = systemName(value);
  if (name === null || wgs84Names.test(name)) return null;
  return refuse(
    `The file says that its coordinates are in the system ${shown(name)}. GeoJSON (RFC 7946) has longitude and latitude in WGS 84 only.`,
    'Convert it to WGS 84 (EPSG:4326) in the program that made it.',
  );
}

function systemName(value: unknown): string | null {
  const crs = isObject(value) ? own(value, 'crs') : undefined;
  const properties = isObject(crs) ? own(crs, 'properties') : undefined;
  const name = isObject(properties) ? (own(properties, 'name') ?? own(properties, 'code')) : undefined;
  return typeof name === 'string' || typeof name === 'number' ? String(name) : null;
}

function readFeature(
  raw: unknown,
  index: number,
  reader: PositionReader,
  features: PreviewFeature[],
  problems: FeatureProblem[],
): void {
  if (!isObject(raw) || own(raw, 'type') !== 'Feature') {
    const why = `it is ${isObject(raw) ? `of the type ${shown(own(raw, 'type'))}` : shown(raw)}, not a feature`;
    problems.push({ index, name: `Feature ${index + 1}`, why, whatToDo: 'Mend the file, or go on without it.' });
    return;
  }
  const given = own(raw, 'properties');
  const properties: RawObject = isObject(given) ? given : {};
  const name = nameOf(properties, own(raw, 'id'), index);
  const kind = kindOfOurs(properties);
  if (kind === 'computed') return;
  const ours = kind === null ? null : ourThing(kind, properties);
  const geometry = own(raw, 'geometry');
  if (geometry === null || geometry === undefined) {
    if (ours) features.push({ ...bare(String(index), index, name, properties), ours });
    else {
      const whatToDo = 'Draw it in the program that made the file, or go on without it.';
      problems.push({ index, name, why: 'it has no geometry', whatToDo });
    }
    return;
  }
  const { parts, faults }: Parts = partsOf(geometry, reader);
  for (const why of faults) problems.push({ index, name, why, whatToDo: remedyFor(why) });
  if (ours) {
    if (parts.length > 1 && parts[0]!.shape === 'line') {
      const whatToDo = 'Join its pieces in the program that changed it.';
      problems.push({ index, name, why: 'its line is in several pieces that do not meet', whatToDo });
    } else if (parts.length > 0 && faults.length === 0) features.push(oursWith(ours, parts, index, name, properties));
    return;
  }
  for (const [i, { shape, path }] of parts.entries()) {
    const key = parts.length > 1 ? `${index}.${i}` : String(index);
    const partName = parts.length > 1 ? `${name} (${i + 1})` : name;
    const suggestion = suggestionFor(shape, properties);
    features.push({ ...bare(key, index, partName, properties), shape, path, suggestion, possible: possibleOf[shape] });
  }
}

function bare(key: string, index: number, name: string, properties: RawObject): PreviewFeature {
  return {
    key,
    index,
    name,
    shape: 'none',
    path: [],
    suggestion: 'leaveOut',
    possible: possibleOf.none,
    ours: null,
    widthM: figureOf(properties, ['width', 'widthm', 'gatewidth'], 0.5, 100),
    voltageV: figureOf(properties, ['voltage', 'voltagev', 'volts'], 1, 2_000_000),
  };
}

function oursWith(
  ours: PreviewFeature['ours'],
  parts: Parts['parts'],
  index: number,
  name: string,
  properties: RawObject,
): PreviewFeature {
  const { shape, path } = parts[0]!;
  return { ...bare(String(index), index, name, properties), shape, path, ours };
}

function remedyFor(why: string): string {
  if (why.includes('no place on earth'))
    return 'Check the coordinates: longitude first, then latitude, in degrees of WGS 84.';
  return 'Mend it in the program that made the file, or go on without it.';
}

function notesOn(value: unknown, { seen }: PositionReader, problems: number): string[] {
  const notes: string[] = [];
  if (seen.altitudes) notes.push('Heights in the file are left out.');
  if (seen.wrapped) notes.push('Longitudes past 180 were taken round to the other side of the 180 meridian.');
  if (systemName(value) !== null)
    notes.push('The file names its coordinate system, WGS 84, in the old way; that is fine.');
  if (problems > mostProblems) notes.push(`Only the first ${mostProblems} of ${problems} problems are listed.`);
  return notes;
}

function swapSuspicion({ seen }: PositionReader, bounds: Preview['bounds'], nearTo: LonLat | null): string | null {
  if (seen.swappedFits > seen.unswappedFits) {
    return 'Many latitudes are above 90: latitude and longitude look exchanged.';
  }
  if (!bounds || !nearTo) return null;
  const [west, south, east, north] = bounds;
  const middle: LonLat = [west <= east ? (west + east) / 2 : west, (south + north) / 2];
  if (Math.abs(middle[0]) > 90 || distanceM(nearTo, middle) < farM) return null;
  if (distanceM(nearTo, [middle[1], middle[0]]) >= farM) return null;
  return 'The file lies far from this property, and would lie on it with latitude and longitude exchanged.';
}
