import { Colors, DxfWriter, point2d, point3d, Units } from '@tarikjabiri/dxf';
import type { Geometry, Position } from 'geojson';
import { projectionOf } from '../../coordinates/projection.ts';
import { systemOf } from '../../coordinates/systems.ts';
import { utmDefinition, utmName, utmZoneAt } from '../../coordinates/utm.ts';
import type { Xy } from '../../geometry/types.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import { figures, plainWords } from '../../words/figures.ts';
import type { Figures } from '../../words/types.ts';
import { type AnyFeature, featuresOf } from '../outgoing/featuresOf.ts';
import { outgoingName } from '../outgoing/outgoingName.ts';
import { own } from '../preview/raw.ts';

/** Layers by what is on them; colours are the numbers of the format's own seven. */
const layers = {
  fenceLive: ['FENCE-LIVE', Colors.Red],
  fenceDead: ['FENCE-NOT-LIVE', Colors.White],
  gateway: ['GATEWAYS', Colors.Blue],
  crossing: ['CROSSINGS', Colors.Magenta],
  inGround: ['NO-LONGER-DRAWN', Colors.Yellow],
  takenOut: ['TAKEN-OUT', Colors.White],
  plannedCrossing: ['CROSSINGS-PLANNED', Colors.White],
  switch: ['SWITCHES', Colors.Magenta],
  post: ['POSTS', Colors.White],
  supply: ['SUPPLY', Colors.Green],
  plannedSupply: ['SUPPLY-PLANNED', Colors.White],
  service: ['SERVICES', Colors.Cyan],
  paddock: ['PADDOCKS', Colors.Green],
  note: ['NOTES', Colors.White],
} as const;

type LayerName = keyof typeof layers;

const layerOfKind: Readonly<Record<string, LayerName>> = {
  gateway: 'gateway',
  crossing: 'crossing',
  inGround: 'inGround',
  switch: 'switch',
  post: 'post',
  energiser: 'supply',
  leadOut: 'supply',
  earthField: 'supply',
  service: 'service',
  paddock: 'paddock',
  paddockOutline: 'paddock',
};

const textHeightM = 2.5;

/**
 * The drawing as DXF, a layer to each kind of thing, in metres: of the coordinate system that the property is shown in,
 * where that is a plane one, else east and north of the middle of the property. A note on the drawing says which.
 */
export function writeDxf(project: Project, survey: Survey): string {
  const f = figures(propertyOf(project).units);
  const { toGrid, said } = gridOf(project, survey, f);
  const writer = new DxfWriter();
  writer.setUnits(Units.Meters);
  for (const [name, colour] of Object.values(layers)) writer.addLayer(name, colour, 'CONTINUOUS');
  const placed: Xy[] = [];
  const place = ([lon, lat]: Position): Xy => {
    const xy = toGrid([lon!, lat!]);
    placed.push(xy);
    return xy;
  };
  for (const feature of featuresOf(project, survey)) {
    const layer = layerOf(feature);
    if (!layer || !feature.geometry) continue;
    addGeometry(writer, layer, feature.geometry, place);
    const at = labelPlace(feature.geometry);
    if (at) addText(writer, layer, place(at), labelOf(project, feature, f));
  }
  const corner: Xy = [smallest(placed, 0), smallest(placed, 1)];
  addText(writer, 'note', [corner[0], corner[1] - 4 * textHeightM], said);
  return writer.stringify();
}

interface Grid {
  readonly toGrid: (lonLat: readonly [number, number]) => Xy;
  readonly said: string;
}

function gridOf(project: Project, { plane }: Survey, f: Figures): Grid {
  const { placed, origin, name } = propertyOf(project);
  const { metres } = f.words.exchange.outgoing;
  const local: Grid = { toGrid: plane.toXy, said: metres.local({ name }) };
  if (!placed) return { toGrid: plane.toXy, said: metres.blankGrid({ name }) };
  const system = systemOf(project.coordinateSettings.get('coordinates'));
  if (system.kind === 'degrees') return local;
  const zone = utmZoneAt(origin);
  const { projection } = projectionOf(system.kind === 'utm' ? utmDefinition(zone) : system.definition);
  if (!projection || projection.isDegrees) return local;
  const called = f.say(system.kind === 'utm' ? utmName(zone) : system.name);
  return { toGrid: projection.toGrid, said: metres.grid({ name, system: called }) };
}

function layerOf({ id, properties }: AnyFeature): LayerName | null {
  const kind = String(id).split(':', 1)[0]!;
  if (own(properties ?? {}, 'inTheGround') === false && kind === 'inGround') return 'takenOut';
  if (own(properties ?? {}, 'inTheGround') === false) return kind === 'crossing' ? 'plannedCrossing' : 'plannedSupply';
  if (kind === 'fenceLine') return own(properties ?? {}, 'live') === true ? 'fenceLive' : 'fenceDead';
  return layerOfKind[kind] ?? null;
}

/** Its name; of a crossing also how deep it lies and how surely its place is known. */
function labelOf(project: Project, feature: AnyFeature, f: Figures): string {
  const name = outgoingName(project, feature, f);
  const fields = feature.properties ?? {};
  const [least, most] = [own(fields, 'depthLeastM'), own(fields, 'depthMostM')];
  if (typeof least !== 'number' || typeof most !== 'number') return name;
  const range = plainWords().locate.depth.range({ leastM: least, mostM: most });
  const [is, place] = [own(fields, 'depthIs'), own(fields, 'placeKnownBy')].map(String);
  return f.words.exchange.outgoing.deep({ name, range, is: is!, place: place! });
}

function addGeometry(writer: DxfWriter, layer: LayerName, geometry: Geometry, place: (at: Position) => Xy): void {
  const options = { layerName: layers[layer][0] };
  const polyline = (path: readonly Position[]) => {
    writer.addLWPolyline(
      path.map((position) => ({ point: point2d(...place(position)) })),
      options,
    );
  };
  switch (geometry.type) {
    case 'Point':
      writer.addPoint(...place(geometry.coordinates), 0, options);
      break;
    case 'MultiPoint':
      for (const point of geometry.coordinates) writer.addPoint(...place(point), 0, options);
      break;
    case 'LineString':
      polyline(geometry.coordinates);
      break;
    case 'MultiLineString':
    case 'Polygon':
      for (const path of geometry.coordinates) polyline(path);
      break;
    case 'MultiPolygon':
      for (const path of geometry.coordinates.flat()) polyline(path);
      break;
    default:
      break;
  }
}

/** Where the name stands: at a point, or at the middle vertex of a line or outline. */
function labelPlace(geometry: Geometry): Position | null {
  if (geometry.type === 'Point') return geometry.coordinates;
  if (geometry.type === 'MultiPoint') return geometry.coordinates[0] ?? null;
  const line = geometry.type === 'MultiLineString' ? geometry.coordinates[0] : null;
  const path = geometry.type === 'LineString' ? geometry.coordinates : line;
  if (path) return path[Math.floor(path.length / 2)] ?? null;
  return geometry.type === 'Polygon' ? (geometry.coordinates[0]?.[0] ?? null) : null;
}

function addText(writer: DxfWriter, layer: LayerName, [x, y]: Xy, text: string): void {
  const options = { layerName: layers[layer][0] };
  writer.addText(point3d(x + textHeightM / 2, y + textHeightM / 2), textHeightM, plainText(text), options);
}

/** On one line; letters beyond ASCII in the format's own way, so that they survive whatever code page is read with. */
function plainText(text: string): string {
  return text
    .replace(/[\p{Cc}\s]+/gu, ' ')
    .replace(
      /[^\u0020-\u007e]/g,
      (letter) => `\\U+${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`,
    );
}

function smallest(places: readonly Xy[], axis: 0 | 1): number {
  return places.reduce((least, place) => Math.min(least, place[axis]), places[0]?.[axis] ?? 0);
}
