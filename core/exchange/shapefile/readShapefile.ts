import { projectionOfWkt, type WktProjection } from '../../coordinates/wktProjection.ts';
import { previewOf } from '../preview/previewOf.ts';
import type { RawObject } from '../preview/raw.ts';
import { refuse } from '../preview/refuse.ts';
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
  const notes: string[] = [];
  const layers = archive.entries.filter(({ name }) => /\.shp$/i.test(name));
  for (const [i, entry] of layers.entries()) {
    const layer = layerOf(archive, entry);
    if (typeof layer === 'string') return refuse(layer, 'Save it again from the program that made it.');
    const place = placerOf(layer);
    if (typeof place === 'string') {
      return refuse(place, 'Put the .prj file into the zip, or save it in WGS 84 (EPSG:4326).');
    }
    for (const note of [...layer.notes, ...place.notes]) notes.push(note);
    for (const [row, record] of layer.records.entries()) {
      const properties: RawObject = { ...layer.rows[row], layer: layer.name };
      features.push(featureOf(record, properties, place.toLonLat, features.length, problems));
    }
    options.progress?.((i + 1) / layers.length / 2);
  }
  return previewOf({ noun: 'Shape', features, problems, notes }, options);
}

interface Layer {
  readonly name: string;
  readonly records: readonly ShpRecord[];
  readonly rows: readonly RawObject[];
  readonly prj: string | null;
  readonly notes: readonly string[];
}

function layerOf({ entries, unpack }: Archive, entry: ZipEntry): Layer | string {
  const stem = entry.path.slice(0, -'.shp'.length);
  const beside = (ending: string) => {
    const found = entries.find(({ path }) => path.toLowerCase() === `${stem}.${ending}`.toLowerCase());
    return found ? unpack(found) : null;
  };
  const shp = readShp(unpack(entry));
  if (!shp.ok) return `${entry.name} can’t be read: ${shp.why}.`;
  const [dbf, prj, cpg] = [beside('dbf'), beside('prj'), beside('cpg')];
  const encoding = cpg ? decodeText(cpg).text.trim().slice(0, 40) : null;
  const rows = dbf ? readDbf(dbf, encoding) : [];
  const name = entry.name.replace(/\.shp$/i, '');
  const notes: string[] = [];
  if (!dbf) notes.push(`${name}: the .dbf with the names is missing; its shapes are numbered.`);
  if (rows === null) notes.push(`${name}: the .dbf with the names can’t be read; its shapes are numbered.`);
  if (shp.cutShort) notes.push(`${name}: the file breaks off; only what is whole of it is shown.`);
  return { name, records: shp.records, rows: rows ?? [], prj: prj && decodeText(prj).text, notes };
}

interface Placer {
  readonly toLonLat: (position: readonly number[]) => unknown[];
  readonly notes: readonly string[];
}

/** How a layer's coordinates come to WGS 84, or why they can't. */
function placerOf({ name, records, prj }: Layer): Placer | string {
  if (prj === null) {
    if (!records.every(inDegrees)) {
      return `${name} has no .prj file, so nobody can say what its coordinates mean.`;
    }
    const note = `${name} has no .prj file; its coordinates look like degrees and are taken as WGS 84.`;
    return { toLonLat: (position) => [...position], notes: [note] };
  }
  const projection = projectionOfWkt(prj);
  if (!projection) return `The .prj file of ${name} names a coordinate system that can’t be worked with.`;
  return { toLonLat: throughWkt(projection), notes: notesOn(name, projection) };
}

/** To a tenth of a millimetre: what a projection gives beyond that is noise. */
function throughWkt({ toLonLat }: WktProjection): Placer['toLonLat'] {
  return ([x, y, ...heights]) => {
    const [lon, lat] = toLonLat([x!, y!]);
    return [Math.round(lon * 1e9) / 1e9, Math.round(lat * 1e9) / 1e9, ...heights];
  };
}

function notesOn(layer: string, { name, shiftUnknown }: WktProjection): string[] {
  if (!shiftUnknown) return [`${layer} was brought to WGS 84 from ${name}.`];
  return [
    `${layer} is in ${name}, whose datum may lie up to a few hundred metres from WGS 84. Check a point that you know.`,
  ];
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
    const whatToDo = 'Save it as a line, point or outline in the program that made the file.';
    problems.push({ index, name: `Shape ${index + 1}`, why: fault, whatToDo });
    return { type: 'Feature', properties, geometry: { type: 'GeometryCollection', geometries: [] } };
  }
  if (!geometry) return { type: 'Feature', properties, geometry: null };
  const coordinates = mapPositions(geometry.coordinates, toLonLat);
  return { type: 'Feature', properties, geometry: { type: geometry.type, coordinates } };
}
