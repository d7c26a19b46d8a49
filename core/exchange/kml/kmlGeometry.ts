import { type Message, message } from '../../words/message.ts';
import { childOf, childrenOf, textOf, type XmlElement } from '../xml/readXml.ts';
import { coordinatesIn, trackCoordinate } from './coordinates.ts';

export interface KmlGeometry {
  /** As GeoJSON has it; null where there is a fault. */
  readonly geometry: unknown;
  readonly fault: Message | null;
  /** The way of a receiver. */
  readonly track: boolean;
}

/** The geometry that an element is; null where it is none. */
export function kmlGeometry(element: XmlElement): KmlGeometry | null {
  switch (element.name) {
    case 'Point':
      return sound({ type: 'Point', coordinates: coordinatesOf(element)[0] });
    case 'LineString':
      return sound({ type: 'LineString', coordinates: coordinatesOf(element) });
    case 'LinearRing':
      return sound({ type: 'Polygon', coordinates: [coordinatesOf(element)] });
    case 'Polygon':
      return sound(polygon(element));
    case 'Track':
      return { geometry: { type: 'LineString', coordinates: trackOf(element) }, fault: null, track: true };
    case 'MultiTrack': {
      const coordinates = childrenOf(element, 'Track').map(trackOf);
      return { geometry: { type: 'MultiLineString', coordinates }, fault: null, track: true };
    }
    case 'MultiGeometry':
      return several(element);
    case 'Model':
      return { geometry: null, fault: message('exchange.piece.model'), track: false };
    default:
      return null;
  }
}

function sound(geometry: unknown): KmlGeometry {
  return { geometry, fault: null, track: false };
}

function polygon(element: XmlElement): unknown {
  const boundaries = ['outerBoundaryIs', 'innerBoundaryIs'].flatMap((name) => childrenOf(element, name));
  const rings = boundaries.flatMap((boundary) => childrenOf(boundary, 'LinearRing'));
  // The altitude mode stands on the polygon and holds for its rings.
  const heights = hasHeights(element);
  return {
    type: 'Polygon',
    coordinates: rings.map((ring) => coordinatesIn(textOf(ring, 'coordinates') ?? '', heights)),
  };
}

/** Lines together are a line in pieces, as one that was cut at the 180 meridian is. */
function several(element: XmlElement): KmlGeometry {
  const found = element.children.flatMap((child) => kmlGeometry(child) ?? []);
  const geometries = found.flatMap(({ geometry }) => geometry ?? []) as { type: string; coordinates: unknown }[];
  const linesOnly = geometries.length > 1 && geometries.every(({ type }) => type === 'LineString');
  const geometry = linesOnly
    ? { type: 'MultiLineString', coordinates: geometries.map(({ coordinates }) => coordinates) }
    : { type: 'GeometryCollection', geometries };
  const fault = found.find((one) => one.fault)?.fault ?? null;
  return { geometry, fault, track: found.some(({ track }) => track) };
}

function coordinatesOf(element: XmlElement): unknown[] {
  return coordinatesIn(textOf(element, 'coordinates') ?? '', hasHeights(element));
}

function trackOf(element: XmlElement): unknown[] {
  const heights = hasHeights(element);
  return childrenOf(element, 'coord').map(({ text }) => trackCoordinate(text, heights));
}

/** OGC KML 2.2, 16.4: in every other mode the third figure is not above the sea, or is to be passed over. */
function hasHeights(element: XmlElement): boolean {
  return childOf(element, 'altitudeMode')?.text === 'absolute';
}
