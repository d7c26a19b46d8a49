import { projectionOfWkt, type WktProjection } from '../../coordinates/wktProjection.ts';
import { type Message, message } from '../../words/message.ts';
import { previewOf } from '../preview/previewOf.ts';
import type { RawObject } from '../preview/raw.ts';
import { refuse } from '../preview/refuse.ts';
import { unnamed } from '../preview/suggest.ts';
import type { FeatureProblem, ReadOptions, ReadResult } from '../preview/types.ts';
import { decodeText } from '../text/decodeText.ts';
import type { Archive, ZipEntry } from '../zip/readZip.ts';
import { readDbf } from './readDbf.ts';
import { readShp, type ShpRecord } from './readShp.ts';

/**
 * Reads the layers of a zipped Shapefile: each .shp with the .dbf, .prj and .cpg of the same name. Coordinates come to
 * WGS 84 by the .prj. Throws a `ZipFault`.
 */
export function readShapefile(archive: Archive, options: ReadOptions = {}): ReadResult {
  const features: unknown[] = [];
  const problems: FeatureProblem[] = [];
  const notes: Message[] = [];
  const layers = archive.entries.filter(({ name }) => /\.shp$/i.test(name));
  for (const [i, entry] of layers.entries()) {
    const layer = layerOf(archive, entry);
    if ('code' in layer) return refuse(layer, message('exchange.remedy.saveAgain'));
    const place = placerOf(layer);
    if ('code' in place) return refuse(place, message('exchange.remedy.prjIntoZip'));
    for (const note of [...layer.notes, ...place.notes]) notes.push(note);
    for (const [row, record] of layer.records.entries()) {
      const properties: RawObject = { ...layer.rows[row], layer: layer.name };
      features.push(featureOf(record, properties, place.toLonLat, features.length, problems));
    }
    options.progress?.((i + 1) / layers.length / 2);
  }
  return previewOf({ noun: 'shape', features, problems, notes }, options);
}

interface Layer {
  readonly name: string;
  readonly records: readonly ShpRecord[];
  readonly rows: readonly RawObject[];
  readonly prj: string | null;
  readonly notes: readonly Message[];
}

function layerOf({ entries, unpack }: Archive, entry: ZipEntry): Layer | Message {
  const stem = entry.path.slice(0, -'.shp'.length);
  const beside = (ending: string) => {
    const found = entries.find(({ path }) => path.toLowerCase() === `${stem}.${ending}`.toLowerCase());
    return found ? unpack(found) : null;
  };
  const shp = readShp(unpack(entry));
  if (!shp.ok) return message('exchange.file.shp', { name: entry.name, why: shp.why });
  const [dbf, prj, cpg] = [beside('dbf'), beside('prj'), beside('cpg')];
  const encoding = cpg ? decodeText(cpg).text.trim().slice(0, 40) : null;
  const rows = dbf ? readDbf(dbf, encoding) : [];
  const name = entry.name.replace(/\.shp$/i, '');
  const notes: Message[] = [];
  if (!dbf) notes.push(message('exchange.note.noDbf', { layer: name }));
  if (rows === null) notes.push(message('exchange.note.unreadableDbf', { layer: name }));
  if (shp.cutShort) notes.push(message('exchange.note.cutShort', { layer: name }));
  return { name, records: shp.records, rows: rows ?? [], prj: prj && decodeText(prj).text, notes };
}

interface Placer {
  readonly toLonLat: (position: readonly number[]) => unknown[];
  readonly notes: readonly Message[];
}

/** How a layer's coordinates come to WGS 84, or why they can't. */
function placerOf({ name, records, prj }: Layer): Placer | Message {
  if (prj === null) {
    if (!records.every(inDegrees)) return message('exchange.file.noPrj', { layer: name });
    return { toLonLat: (position) => [...position], notes: [message('exchange.note.noPrj', { layer: name })] };
  }
  const projection = projectionOfWkt(prj);
  if (!projection) return message('exchange.file.unknownPrj', { layer: name });
  return { toLonLat: throughWkt(projection), notes: notesOn(name, projection) };
}

/** To a tenth of a millimetre: what a projection gives beyond that is noise. */
function throughWkt({ toLonLat }: WktProjection): Placer['toLonLat'] {
  return ([x, y, ...heights]) => {
    const [lon, lat] = toLonLat([x!, y!]);
    return [Math.round(lon * 1e9) / 1e9, Math.round(lat * 1e9) / 1e9, ...heights];
  };
}

function notesOn(layer: string, { name: system, shiftUnknown }: WktProjection): Message[] {
  return [message(shiftUnknown ? 'exchange.note.unknownShift' : 'exchange.note.fromSystem', { layer, system })];
}

function inDegrees({ geometry }: ShpRecord): boolean {
  return (
    geometry === null || everyPosition(geometry.coordinates, ([x, y]) => Math.abs(x!) <= 540 && Math.abs(y!) <= 90)
  );
}

function everyPosition(nested: unknown, test: (position: number[]) => boolean): boolean {
  const list = nested as unknown[];
  return typeof list[0] === 'number' ? test(list as number[]) : list.every((inner) => everyPosition(inner, test));
}

function mapPositions(nested: unknown, map: (position: readonly number[]) => unknown[]): unknown {
  const list = nested as unknown[];
  return typeof list[0] === 'number' ? map(list as number[]) : list.map((inner) => mapPositions(inner, map));
}

function featureOf(
  { geometry, fault }: ShpRecord,
  properties: RawObject,
  toLonLat: Placer['toLonLat'],
  index: number,
  problems: FeatureProblem[],
): unknown {
  if (fault !== null) {
    const whatToDo = message('exchange.remedy.saveAsLine');
    problems.push({ index, name: unnamed('shape', index), why: fault, whatToDo });
    return { type: 'Feature', properties, geometry: { type: 'GeometryCollection', geometries: [] } };
  }
  if (!geometry) return { type: 'Feature', properties, geometry: null };
  const coordinates = mapPositions(geometry.coordinates, toLonLat);
  return { type: 'Feature', properties, geometry: { type: geometry.type, coordinates } };
}
