import type { Geometry, Position } from 'geojson';
import { EditRefused } from '../../model/edits/support/edit.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import { figures } from '../../words/figures.ts';
import type { Texts } from '../../words/message.ts';
import type { Figures } from '../../words/types.ts';
import { type AnyFeature, featuresOf } from '../outgoing/featuresOf.ts';
import { outgoingName } from '../outgoing/outgoingName.ts';
import { registerText, saidOf } from '../outgoing/registerText.ts';
import { thingText } from '../outgoing/thingText.ts';
import { whyNotOnEarth } from '../outgoing/whyNotOnEarth.ts';
import { escapeXml } from '../xml/escapeXml.ts';
import { writeZip } from '../zip/writeZip.ts';
import { thingDatum } from './kmlProperties.ts';
import { kindShown, kmlStyles, styleOf } from './kmlStyles.ts';

interface Folder {
  readonly name: keyof Texts['exchange']['outgoing']['folders'];
  readonly kinds: readonly string[];
  readonly shown: boolean;
}

/** Folders in the order in which they are shown; what holds only data comes last, and is not shown at first. */
const folders: readonly Folder[] = [
  { name: 'gateways', kinds: ['gateway'], shown: true },
  { name: 'crossings', kinds: ['crossing'], shown: true },
  { name: 'left', kinds: ['inGround'], shown: true },
  { name: 'points', kinds: ['buriedPoint'], shown: true },
  { name: 'switches', kinds: ['switch'], shown: true },
  { name: 'fenceLines', kinds: ['fenceLine'], shown: true },
  { name: 'supply', kinds: ['energiser', 'leadOut', 'earthField'], shown: true },
  { name: 'posts', kinds: ['post'], shown: true },
  { name: 'services', kinds: ['service'], shown: true },
  { name: 'planned', kinds: ['planned'], shown: true },
  { name: 'takenOut', kinds: ['takenOut'], shown: false },
  { name: 'paddocks', kinds: ['paddock', 'paddockOutline'], shown: false },
  { name: 'sections', kinds: ['run'], shown: false },
  { name: 'readings', kinds: ['reading'], shown: false },
  {
    name: 'data',
    kinds: [
      'property',
      'fenceType',
      'conductor',
      'switchCandidate',
      'switchRule',
      'crossingRecord',
      'testRun',
      'earthTest',
      'builtMark',
      'ground',
    ],
    shown: false,
  },
];

/**
 * The whole drawing as KML (OGC 2.2), in styled folders. Each thing holds itself whole as an untyped datum, so that it
 * comes back as what it was. Throws `EditRefused` for a drawing without a place on earth.
 */
export function writeKml(project: Project, survey: Survey): string {
  const refusal = whyNotOnEarth(project, 'KML');
  if (refusal) throw new EditRefused(refusal);
  const writer = { project, f: figures(propertyOf(project).units), said: registerText(project, survey) };
  const words = writer.f.words.exchange.outgoing;
  const byKind = Map.groupBy(featuresOf(project, survey), kindShown);
  const parts = folders.flatMap(({ name, kinds, shown }) => {
    const features = kinds.flatMap((kind) => byKind.get(kind) ?? []);
    if (features.length === 0) return [];
    const placemarks = features.map((feature) => placemark(writer, feature, shown));
    return [`<Folder><name>${escapeXml(words.folders[name])}</name>${visibility(shown)}`, ...placemarks, '</Folder>'];
  });
  const { name, invented } = propertyOf(project);
  const about = words.about({ invented });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<kml xmlns="http://www.opengis.net/kml/2.2">',
    `<Document><name>${escapeXml(name)}</name><description>${escapeXml(about)}</description>`,
    ...kmlStyles(),
    ...parts,
    '</Document>',
    '</kml>',
    '',
  ].join('\n');
}

/** The same, packed, as "doc.kml" (OGC KML 2.2, annex C). */
export function writeKmz(project: Project, survey: Survey): Uint8Array {
  return writeZip([{ name: 'doc.kml', text: writeKml(project, survey) }]);
}

interface Writer {
  readonly project: Project;
  readonly f: Figures;
  readonly said: ReadonlyMap<string, string>;
}

function placemark({ project, f, said }: Writer, feature: AnyFeature, shown: boolean): string {
  const style = styleOf(feature);
  return [
    `<Placemark><name>${escapeXml(outgoingName(project, feature, f))}</name>${visibility(shown)}`,
    `<description>${escapeXml(saidOf(said, feature))}</description>`,
    style ? `<styleUrl>#${style}</styleUrl>` : '',
    `<ExtendedData><Data name="${thingDatum}"><value>${escapeXml(thingText(feature))}</value></Data></ExtendedData>`,
    feature.geometry ? geometryText(feature.geometry) : '',
    '</Placemark>',
  ].join('');
}

function visibility(shown: boolean): string {
  return shown ? '' : '<visibility>0</visibility>';
}

function geometryText(geometry: Geometry): string {
  switch (geometry.type) {
    case 'Point':
      return `<Point><coordinates>${position(geometry.coordinates)}</coordinates></Point>`;
    case 'LineString':
      return `<LineString><tessellate>1</tessellate>${coordinates(geometry.coordinates)}</LineString>`;
    case 'Polygon':
      return polygon(geometry.coordinates);
    case 'MultiLineString':
      return multi(geometry.coordinates.map((line) => geometryText({ type: 'LineString', coordinates: line })));
    case 'MultiPolygon':
      return multi(geometry.coordinates.map(polygon));
    case 'MultiPoint':
      return multi(geometry.coordinates.map((place) => geometryText({ type: 'Point', coordinates: place })));
    case 'GeometryCollection':
      return multi(geometry.geometries.map(geometryText));
  }
}

function multi(parts: readonly string[]): string {
  return `<MultiGeometry>${parts.join('')}</MultiGeometry>`;
}

function polygon([shell, ...holes]: readonly (readonly Position[])[]): string {
  const ring = (name: string, path: readonly Position[]) =>
    `<${name}><LinearRing>${coordinates(path)}</LinearRing></${name}>`;
  const inner = holes.map((hole) => ring('innerBoundaryIs', hole)).join('');
  return `<Polygon><tessellate>1</tessellate>${ring('outerBoundaryIs', shell ?? [])}${inner}</Polygon>`;
}

function coordinates(path: readonly Position[]): string {
  return `<coordinates>${path.map(position).join(' ')}</coordinates>`;
}

function position([lon, lat]: Position): string {
  return `${lon},${lat}`;
}
