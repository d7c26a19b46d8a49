import { message } from '../../words/message.ts';
import { previewOf, type RawFile } from '../preview/previewOf.ts';
import { isObject, own, shown } from '../preview/raw.ts';
import { refuse } from '../preview/refuse.ts';
import type { ReadOptions, ReadResult } from '../preview/types.ts';
import { parseJson } from './parseJson.ts';

/**
 * Reads a GeoJSON text (RFC 7946) for a look before anything is taken over. A text that is no GeoJSON at all is
 * refused with the reason; a feature that can't be used is told of one by one.
 */
export function readGeoJson(text: string, options: ReadOptions = {}): ReadResult {
  const parsed = parseJson(text);
  if (!parsed.ok) return parsed;
  const raw = featuresOf(parsed.value);
  if (!Array.isArray(raw)) return raw as ReadResult;
  const foreign = foreignSystem(parsed.value);
  if (foreign) return foreign;
  return previewOf({ noun: 'feature', features: raw, notes: notesOn(parsed.value) }, options);
}

/** The features of a collection, or the one feature, or the one geometry made a feature. */
function featuresOf(value: unknown): readonly unknown[] | ReadResult {
  if (!isObject(value)) {
    const what = shown(value);
    return refuse(message('exchange.file.noGeoJsonObject', { what }), message('exchange.remedy.selectGeoJson'));
  }
  const type = own(value, 'type');
  if (type === 'FeatureCollection') {
    const features = own(value, 'features');
    if (Array.isArray(features)) return features as readonly unknown[];
    return refuse(message('exchange.file.noFeatureList'), message('exchange.remedy.saveAgain'));
  }
  if (type === 'Feature') return [value];
  if (Object.hasOwn(value, 'coordinates') || Object.hasOwn(value, 'geometries')) {
    return [{ type: 'Feature', properties: {}, geometry: value }];
  }
  return refuse(message('exchange.file.otherJson', { type: shown(type) }), message('exchange.remedy.selectOfType'));
}

const wgs84Names = /CRS84|EPSG:{1,2}(\d*:)?4326|WGS ?84/i;

/** Older files may name another coordinate system; RFC 7946 knows only WGS 84. */
function foreignSystem(value: unknown): ReadResult | null {
  const name = systemName(value);
  if (name === null || wgs84Names.test(name)) return null;
  return refuse(message('exchange.file.foreignSystem', { system: shown(name) }), message('exchange.remedy.toWgs84'));
}

function systemName(value: unknown): string | null {
  const crs = isObject(value) ? own(value, 'crs') : undefined;
  const properties = isObject(crs) ? own(crs, 'properties') : undefined;
  const name = isObject(properties) ? (own(properties, 'name') ?? own(properties, 'code')) : undefined;
  return typeof name === 'string' || typeof name === 'number' ? String(name) : null;
}

function notesOn(value: unknown): NonNullable<RawFile['notes']> {
  return systemName(value) === null ? [] : [message('exchange.note.namesWgs84')];
}
