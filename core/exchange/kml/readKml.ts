import { type Message, message } from '../../words/message.ts';
import { previewOf } from '../preview/previewOf.ts';
import type { RawObject } from '../preview/raw.ts';
import { unnamed } from '../preview/suggest.ts';
import type { FeatureProblem, ReadOptions, ReadResult } from '../preview/types.ts';
import { readXml, type XmlElement, type XmlRefusal } from '../xml/readXml.ts';
import { type KmlGeometry, kmlGeometry } from './kmlGeometry.ts';
import { kmlProperties } from './kmlProperties.ts';

/** What in a file is told of, but can't be taken in as lines and points. */
const remarks: Readonly<Record<string, Message>> = {
  NetworkLink: message('exchange.note.networkLink'),
  GroundOverlay: message('exchange.note.groundOverlay'),
  PhotoOverlay: message('exchange.note.photoOverlay'),
  ScreenOverlay: message('exchange.note.screenOverlay'),
};

/** Large, and of no use here. */
const passedOver: ReadonlySet<string> = new Set(['Style', 'StyleMap', 'Region', 'LookAt', 'Camera', 'Schema']);

/** Reads a KML text (OGC KML 2.2 and 2.3) for a look before anything is taken over. */
export function readKml(text: string, options: ReadOptions = {}): ReadResult {
  const features: unknown[] = [];
  const problems: FeatureProblem[] = [];
  const notes = new Set<Message>();
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
    { noun: 'placemark', features, problems, notes: [...notes] },
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

function problemOf(why: Message, index: number, properties: RawObject): FeatureProblem {
  const isNamed = typeof properties.name === 'string' && properties.name !== '';
  const name = isNamed ? String(properties.name) : unnamed('placemark', index);
  return { index, name, why, whatToDo: message('exchange.remedy.drawAsLine') };
}

function notKml(name: string): XmlRefusal {
  return {
    message: message('exchange.file.otherXml', { root: name.slice(0, 40), wanted: 'KML' }),
    remedy: message('exchange.remedy.selectKml'),
  };
}
