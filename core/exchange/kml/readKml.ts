import { previewOf } from '../preview/previewOf.ts';
import type { RawObject } from '../preview/raw.ts';
import type { FeatureProblem, ReadOptions, ReadResult } from '../preview/types.ts';
import { readXml, type XmlElement, type XmlRefusal } from '../xml/readXml.ts';
import { type KmlGeometry, kmlGeometry } from './kmlGeometry.ts';
import { kmlProperties } from './kmlProperties.ts';

/** What in a file is told of, but can't be taken in as lines and points. */
const remarks: Readonly<Record<string, string>> = {
  NetworkLink: 'The file points to other files; only what lies in it is read. Open the others by themselves.',
  GroundOverlay: 'The file lays pictures on the map; they are left out. Bring a picture in as a map underneath.',
  PhotoOverlay: 'Photographs in the file are left out.',
  ScreenOverlay: 'Pictures for the edge of the screen in the file are left out.',
};

/** Large, and of no use here. */
const passedOver: ReadonlySet<string> = new Set(['Style', 'StyleMap', 'Region', 'LookAt', 'Camera', 'Schema']);

/** Reads a KML text (OGC KML 2.2 and 2.3) for a look before anything is taken over. */
export function readKml(text: string, options: ReadOptions = {}): ReadResult {
  const features: unknown[] = [];
  const problems: FeatureProblem[] = [];
  const notes = new Set<string>();
  const { progress } = options;

  const refusal = readXml(text, {
    root: (name) => (name === 'kml' ? null : notKml(name)),
    progress: progress && ((fraction) => progress(fraction / 2)),
    closed: (element, above) => {
      if (element.name === 'Placemark') {
        features.push(placemark(element, above, features.length, problems));
        return 'drop';
      }
      const remark = remarks[element.name];
      if (remark) notes.add(remark);
      return remark || passedOver.has(element.name) || isFolder(element) ? 'drop' : 'keep';
    },
  });
  if (refusal) return { ok: false, ...refusal };
  return previewOf(
    { noun: 'Placemark', features, problems, notes: [...notes] },
    { ...options, ...(progress && { progress: (fraction: number) => progress((1 + fraction) / 2) }) },
  );
}

function isFolder({ name }: XmlElement): boolean {
  return name === 'Folder' || name === 'Document';
}

function placemark(
  element: XmlElement,
  above: readonly XmlElement[],
  index: number,
  problems: FeatureProblem[],
): unknown {
  const properties = kmlProperties(element, above);
  const found = element.children.flatMap((child) => kmlGeometry(child) ?? []);
  for (const { fault } of found) if (fault) problems.push(problemOf(fault, index, properties));
  const geometries = found.flatMap(({ geometry }) => geometry ?? []);
  const geometry = geometries.length > 1 ? { type: 'GeometryCollection', geometries } : (geometries[0] ?? null);
  if (geometry === null && found.length > 0) return { type: 'Feature', properties, geometry: nothing };
  const track = found.some((one: KmlGeometry) => one.track);
  return { type: 'Feature', id: element.attributes.id, properties, geometry, track };
}

/** Stands where all of a placemark was told of already. */
const nothing = { type: 'GeometryCollection', geometries: [] };

function problemOf(why: string, index: number, properties: RawObject): FeatureProblem {
  const name =
    typeof properties.name === 'string' && properties.name !== '' ? properties.name : `Placemark ${index + 1}`;
  return { index, name, why, whatToDo: 'Draw it as a line, point or outline in the program that made the file.' };
}

function notKml(name: string): XmlRefusal {
  return {
    message: `This is an XML file of the sort "${name.slice(0, 40)}", not KML.`,
    remedy: 'Choose a KML, KMZ or GPX file.',
  };
}
