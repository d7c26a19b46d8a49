import { message } from '../../words/message.ts';
import { numberOrText } from '../kml/coordinates.ts';
import { oursInText } from '../preview/oursInText.ts';
import { previewOf } from '../preview/previewOf.ts';
import type { RawObject } from '../preview/raw.ts';
import type { ReadOptions, ReadResult } from '../preview/types.ts';
import { childOf, readXml, textOf, type XmlElement, type XmlRefusal } from '../xml/readXml.ts';

/** Where a thing of ours stands whole, in the extensions of GPX 1.1. */
export const thingElement = 'thing';

/** Reads a GPX text (1.1; 1.0 differs in nothing that is read) for a look: waypoints, routes and tracks with heights. */
export function readGpx(text: string, options: ReadOptions = {}): ReadResult {
  const points: unknown[] = [];
  const lines: unknown[] = [];
  const rest: unknown[] = [];
  /** Segments of the track that is being read, and positions of its last segment or of the route. */
  let segments: unknown[][] = [];
  let positions: unknown[] = [];
  const { progress } = options;

  const refusal = readXml(text, {
    root: (name) => (name === 'gpx' ? null : notGpx(name)),
    progress: progress && ((fraction) => progress(fraction / 2)),
    closed: (element) => {
      switch (element.name) {
        case 'wpt':
          points.push(feature(element, { type: 'Point', coordinates: positionOf(element) }));
          return 'drop';
        case 'trkpt':
        case 'rtept':
          positions.push(positionOf(element));
          return 'drop';
        case 'trkseg':
          segments.push(positions);
          positions = [];
          return 'drop';
        case 'trk':
          lines.push({ ...feature(element, { type: 'MultiLineString', coordinates: segments }), track: true });
          segments = [];
          return 'drop';
        case 'rte':
          lines.push(feature(element, { type: 'LineString', coordinates: positions }));
          positions = [];
          return 'drop';
        case 'gpx':
          for (const properties of oursOf(element)) rest.push({ type: 'Feature', properties, geometry: null });
          return 'drop';
        default:
          return 'keep';
      }
    },
  });
  if (refusal) return { ok: false, ...refusal };
  return previewOf(
    { noun: 'piece', features: [...lines, ...points, ...rest] },
    { ...options, ...(progress && { progress: (fraction: number) => progress((1 + fraction) / 2) }) },
  );
}

function positionOf(element: XmlElement): unknown[] {
  const { lon, lat } = element.attributes;
  const height = textOf(element, 'ele');
  const place = [lon, lat].map((text) => (text === undefined ? undefined : numberOrText(text)));
  return height === undefined ? place : [...place, numberOrText(height)];
}

/** What the words of a piece say; `desc`, `cmt` and `sym` help to tell what it is. */
function feature(
  element: XmlElement,
  geometry: unknown,
): { type: 'Feature'; properties: RawObject; geometry: unknown } {
  const [ours] = oursOf(element);
  return { type: 'Feature', properties: ours ?? saidOf(element), geometry };
}

function saidOf(element: XmlElement): RawObject {
  const said: Record<string, string> = {};
  for (const name of ['name', 'desc', 'cmt', 'sym', 'type']) {
    const text = textOf(element, name);
    if (text) said[name] = text;
  }
  return said;
}

function oursOf(element: XmlElement): RawObject[] {
  const extensions = childOf(element, 'extensions');
  if (!extensions) return [];
  const texts = extensions.children.filter(({ name }) => name === thingElement).map(({ text }) => text);
  return texts.map(oursInText).filter((properties) => properties !== null);
}

function notGpx(name: string): XmlRefusal {
  return {
    message: message('exchange.file.otherXml', { root: name.slice(0, 40), wanted: 'GPX' }),
    remedy: message('exchange.remedy.selectGpx'),
  };
}
