import type { Geometry, Position } from 'geojson';
import { EditRefused } from '../../model/edits/support/edit.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import { type AnyFeature, featuresOf } from '../outgoing/featuresOf.ts';
import { outgoingName } from '../outgoing/outgoingName.ts';
import { registerText, saidOf } from '../outgoing/registerText.ts';
import { thingText } from '../outgoing/thingText.ts';
import { whyNotOnEarth } from '../outgoing/whyNotOnEarth.ts';
import { escapeXml } from '../xml/escapeXml.ts';
import { writeZip } from '../zip/writeZip.ts';
import { thingDatum } from './kmlProperties.ts';
import { kindShown, kmlStyles, styleOf } from './kmlStyles.ts';

/** Folders in the order in which they are shown; what holds only data comes last, and is not shown at first. */
const folders: readonly { readonly name: string; readonly kinds: readonly string[]; readonly shown: boolean }[] = [
  { name: 'Gateways', kinds: ['gateway'], shown: true },
  { name: 'Crossings in the ground and overhead', kinds: ['crossing'], shown: true },
  { name: 'In the ground, no longer drawn', kinds: ['inGround'], shown: true },
  { name: 'Points of crossings as recorded', kinds: ['buriedPoint'], shown: true },
  { name: 'Cut-out switches', kinds: ['switch'], shown: true },
  { name: 'Fence lines', kinds: ['fenceLine'], shown: true },
  { name: 'Energisers, lead-outs and earth', kinds: ['energiser', 'leadOut', 'earthField'], shown: true },
  { name: 'Posts', kinds: ['post'], shown: true },
  { name: 'Services and hazards', kinds: ['service'], shown: true },
  { name: 'Planned cables, not in the ground', kinds: ['planned'], shown: true },
  { name: 'Taken out of the ground', kinds: ['takenOut'], shown: false },
  { name: 'Paddocks', kinds: ['paddock', 'paddockOutline'], shown: false },
  { name: 'Sections', kinds: ['run'], shown: false },
  { name: 'Readings', kinds: ['reading'], shown: false },
  {
    name: 'For Undergate only',
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

const caution =
  'Drawn for planning. Places are as good as what was drawn or measured. Turn the energiser off and prove the fence dead before work; have other buried services located before digging.';

/**
 * The whole drawing as KML (OGC 2.2), in styled folders. Each thing holds itself whole as an untyped datum, so that it
 * comes back as what it was. Throws `EditRefused` for a drawing without a place on earth.
 */
export function writeKml(project: Project, survey: Survey): string {
  const refusal = whyNotOnEarth(project, 'KML');
  if (refusal) throw new EditRefused(refusal);
  const said = registerText(project, survey);
  const byKind = Map.groupBy(featuresOf(project, survey), kindShown);
  const parts = folders.flatMap(({ name, kinds, shown }) => {
    const features = kinds.flatMap((kind) => byKind.get(kind) ?? []);
    if (features.length === 0) return [];
    const placemarks = features.map((feature) => placemark(project, feature, said, shown));
    return [`<Folder><name>${escapeXml(name)}</name>${visibility(shown)}`, ...placemarks, '</Folder>'];
  });
  const { name, invented } = propertyOf(project);
  const about = `${invented ? 'An invented example. No such property exists. ' : ''}${caution}`;
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

function placemark(project: Project, feature: AnyFeature, said: ReadonlyMap<string, string>, shown: boolean): string {
  const style = styleOf(feature);
  return [
    `<Placemark><name>${escapeXml(outgoingName(project, feature))}</name>${visibility(shown)}`,
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
