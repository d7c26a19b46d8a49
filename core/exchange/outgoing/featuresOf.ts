import type { Feature, Geometry } from 'geojson';
import type { Xy } from '../../geometry/types.ts';
import { allCrossings } from '../../locate/allCrossings.ts';
import { leftThing } from '../../locate/buriedThings.ts';
import type { CrossingAsBuilt } from '../../locate/crossingAsBuilt.ts';
import { openingDug } from '../../locate/crossingSource.ts';
import { type CrossingDepth, depthOf } from '../../locate/depth.ts';
import { type LeftInGround, leftInGround } from '../../locate/inGround/leftInGround.ts';
import { leftWithinM } from '../../locate/inGround/leftWithin.ts';
import { fateInShort } from '../../locate/inGround/leftWords.ts';
import { isInTheGround } from '../../locate/inTheGround.ts';
import type { SolvedPoint } from '../../locate/ties.ts';
import { largestOf } from '../../model/extremes.ts';
import type { InGround } from '../../model/inGroundThings.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { Kind, LonLat, Service, Thing } from '../../model/things.ts';
import { slice } from '../../shapes/measuredPath.ts';
import { isPlaceOnEarth } from '../../shapes/workingPlane.ts';
import type { Paddock, Survey, SwitchRow } from '../../survey/types.ts';
import { figures } from '../../words/figures.ts';
import type { Figures } from '../../words/types.ts';
import { cutAtMeridian } from '../preview/antimeridian.ts';
import {
  clockwiseProperty,
  exchangedKinds,
  idProperty,
  kindProperty,
  marked,
  placeOfProperty,
} from '../preview/ours.ts';
import { areaGeometry, lineGeometry, linesGeometry, pointGeometry, pointsGeometry } from './geometries.ts';
import { isAnticlockwise } from './rings.ts';

export type AnyFeature = Feature<Geometry | null>;

/**
 * The whole drawing as GeoJSON features: every thing with all its fields, and what is computed from it: crossings as
 * their curves, paddocks as areas, runs with the letter of their section. Coordinates have all their digits.
 */
export function* featuresOf(project: Project, survey: Survey): Generator<AnyFeature> {
  const paddocks = new Map(survey.paddocks.flatMap((paddock) => (paddock.named ? [[paddock.named.id, paddock]] : [])));
  const switches = new Map(survey.switches.map((row) => [row.switch.id, row]));
  const lying = allCrossings(project, survey);
  const writer: Writer = {
    f: figures(propertyOf(project).units),
    project,
    survey,
    paddocks,
    letters: sectionLetters(survey),
    switches,
    lying,
    points: pointsById(lying),
  };
  for (const kind of exchangedKinds) {
    for (const thing of project[kind].values() as Iterable<Thing>) {
      const feature = featureOf(writer, thing);
      yield feature;
      if (thing.kind === 'inGround') yield* otherPlaces(writer, thing, feature);
    }
  }
  for (const [i, paddock] of survey.paddocks.entries()) {
    if (!paddock.named)
      yield computed('paddockOutline', `unnamed ${i + 1}`, paddockArea(survey, paddock), areaFields(paddock));
  }
  yield* runs(project, writer);
}

interface Writer {
  readonly f: Figures;
  readonly project: Project;
  readonly survey: Survey;
  readonly paddocks: ReadonlyMap<string, Paddock>;
  /** Section letters by network edge. */
  readonly letters: ReadonlyMap<number, string>;
  readonly switches: ReadonlyMap<string, SwitchRow>;
  /** Buried crossings by gateway, as they lie by their records. */
  readonly lying: ReadonlyMap<string, CrossingAsBuilt>;
  /** Buried points with every place where they can be, by id. */
  readonly points: ReadonlyMap<string, SolvedPoint>;
}

function pointsById(lying: Writer['lying']): Map<string, SolvedPoint> {
  return new Map(
    [...lying.values()].flatMap(({ points }) => points.map((solved) => [solved.point.id, solved] as const)),
  );
}

function sectionLetters({ sections }: Survey): Map<number, string> {
  return new Map(sections.flatMap(({ letter, edges }) => edges.map((edge) => [edge, letter] as const)));
}

function featureOf(writer: Writer, thing: Thing): AnyFeature {
  const { kind, id, ...fields } = thing;
  const own = withoutPlace(kind, fields);
  const { geometry, figures } = drawn(writer, thing);
  // A figure never hides a field, also one of the same name that only a newer version knows.
  const properties = { ...marked(kind, id, own), ...figures, ...own };
  return { type: 'Feature', id: `${kind}:${id}`, properties, geometry };
}

/** Where cable may lie that no line of a thing left in the ground leads to, a point each, with all that is said of the thing. */
function* otherPlaces({ project, survey }: Writer, { id }: InGround, of: AnyFeature): Generator<AnyFeature> {
  if (of.geometry?.type !== 'LineString' && of.geometry?.type !== 'MultiLineString') return;
  const left = leftInGround(project, survey).find((each) => each.thing.id === id)!;
  const spots = left.ways.flatMap((way) => (way.length === 1 ? way : []));
  for (const [i, xy] of spots.entries()) {
    const placeId = `${String(of.id)} ${i + 2}`;
    const marks = { [kindProperty]: 'otherPlace', [idProperty]: placeId, [placeOfProperty]: of.id };
    const geometry = pointGeometry(rounded(survey.plane.toLonLat(xy)));
    yield { type: 'Feature', id: placeId, properties: { ...of.properties, ...marks }, geometry };
  }
}

/** The field that a feature's geometry holds. A paddock's name keeps the point it was given at: its geometry is an area. */
const placeField: Partial<Record<Kind, 'at' | 'path'>> = {
  fenceLine: 'path',
  leadOut: 'path',
  service: 'path',
  post: 'at',
  energiser: 'at',
  earthField: 'at',
  reading: 'at',
};

function withoutPlace(kind: Kind, fields: object): object {
  return Object.fromEntries(Object.entries(fields).filter(([field]) => field !== placeField[kind]));
}

interface Drawn {
  readonly geometry: Geometry | null;
  /** Computed figures to read; they are not taken over when the file comes back. */
  readonly figures?: Readonly<Record<string, unknown>>;
}

function drawn({ f, project, survey, paddocks, letters, switches, lying, points }: Writer, thing: Thing): Drawn {
  const toLonLat = (xy: Xy) => rounded(survey.plane.toLonLat(xy));
  switch (thing.kind) {
    case 'fenceLine': {
      const edges = survey.network.runsOfLine.get(thing.id) ?? [];
      const lengthM = survey.lines.get(thing.id)?.lengthM ?? null;
      const sections = [...new Set(edges.flatMap((edge) => letters.get(edge) ?? []))];
      return {
        geometry: onEarth(thing.path, lineGeometry),
        figures: { lengthM, overGroundM: survey.heights.slopeLengthM(thing.id, 0, lengthM ?? 0), sections },
      };
    }
    case 'leadOut': {
      const figures = thing.buried ? { inTheGround: isInTheGround(project, thing) } : {};
      return { geometry: onEarth(thing.path, lineGeometry), figures };
    }
    case 'service':
      return { geometry: onEarth(thing.path, () => serviceGeometry(thing)), figures: windingOf(thing) };
    case 'gateway': {
      const shape = survey.gateways.get(thing.id);
      if (!shape) return { geometry: null };
      const posts = { startPost: rounded(shape.startPostAt), endPost: rounded(shape.endPostAt) };
      return { geometry: pointGeometry(toLonLat(shape.centre)), figures: posts };
    }
    case 'crossing': {
      const found = survey.crossings.get(thing.gatewayId);
      if (found?.crossing.id !== thing.id) return { geometry: null };
      const asBuilt = lying.get(thing.gatewayId);
      const dug = openingDug(project, survey, thing.gatewayId)?.figures ?? found;
      const { trenchM, pipeM, liveCableM, earthCableM, bendRadiusM } = dug;
      const figures = {
        trenchM,
        pipeM,
        liveCableM,
        earthCableM,
        bendRadiusM: Number.isFinite(bendRadiusM) ? bendRadiusM : null,
        ...(asBuilt && knownOf(asBuilt, f)),
      };
      // Every way that the trench may run: none of them alone is the crossing.
      const ways = (asBuilt?.courses ?? [found]).map(({ path }) => path.map(toLonLat));
      return { geometry: linesGeometry(ways), figures };
    }
    case 'switch': {
      const row = switches.get(thing.id);
      return row
        ? { geometry: pointGeometry(rounded(row.at)), figures: { placeText: f.say(row.where) } }
        : { geometry: null };
    }
    case 'paddock': {
      const paddock = paddocks.get(thing.id);
      if (!paddock) return { geometry: onEarth([thing.at], ([at]) => pointGeometry(at!)) };
      return { geometry: paddockArea(survey, paddock), figures: areaFields(paddock) };
    }
    case 'inGround': {
      const left = leftInGround(project, survey).find((each) => each.thing.id === thing.id)!;
      const ways = leftThing(left).ways.map(({ path }) => path.map(toLonLat));
      const lines = ways.filter((way) => way.length > 1);
      const geometry = lines.length > 0 ? linesGeometry(lines) : pointsGeometry(ways.flat());
      return { geometry, figures: leftFigures(left, f) };
    }
    case 'buriedPoint': {
      const solved = points.get(thing.id);
      if (!solved) return { geometry: null };
      const { places, basis } = solved;
      const withinM = places.length > 0 ? largestOf(places.map((place) => place.withinM)) : null;
      const geometry = pointsGeometry(places.map(({ xy }) => toLonLat(xy)));
      return {
        geometry,
        figures: { placeKnownBy: f.words.locate.basis[basis === 'none' ? 'drawn' : basis], placeWithinM: withinM },
      };
    }
    case 'post':
    case 'energiser':
    case 'earthField':
    case 'reading':
      return { geometry: onEarth([thing.at], ([at]) => pointGeometry(at!)) };
    default:
      return { geometry: null };
  }
}

/** How surely a crossing's place and depth are known, to read; from the line that is shown first over all others. */
function knownOf(crossing: CrossingAsBuilt, f: Figures): Readonly<Record<string, unknown>> {
  const { inGround, certainty } = crossing;
  const depth = depthOf(crossing);
  return {
    inTheGround: inGround,
    placeKnownBy: f.words.locate.basis[inGround ? certainty.basis : 'planned'],
    placeWithinM: certainty.withinM,
    depthLeastM: depth.leastM,
    depthMostM: depth.mostM,
    depthIs: depthMeaning(depth, f),
  };
}

/** The same of what is drawn no longer. */
function leftFigures(left: LeftInGround, f: Figures): Readonly<Record<string, unknown>> {
  const inTheGround = left.thing.fate !== 'takenOut';
  if (left.crossing) return { ...knownOf(left.crossing, f), inTheGround, state: f.say(fateInShort(left.thing)) };
  const placeWithinM = leftWithinM(left);
  return {
    inTheGround,
    state: f.say(fateInShort(left.thing)),
    placeKnownBy: f.words.locate.basis.drawn,
    placeWithinM,
  };
}

/** What a depth is of, in every export. */
export function depthMeaning({ measured, places }: Pick<CrossingDepth, 'measured' | 'places'>, f: Figures): string {
  const { depth } = f.words.exchange.outgoing;
  if (!measured) return depth.planned;
  return places === 1 ? depth.measuredOnce : depth.measured;
}

function onEarth(path: readonly LonLat[], make: (path: readonly LonLat[]) => Geometry | null): Geometry | null {
  return path.every(isPlaceOnEarth) ? make(path) : null;
}

/** A flood zone is an area, if it can be one whole; all other services are points or lines, closed or not. */
function serviceGeometry(service: Service): Geometry | null {
  const { path } = service;
  if (path.length === 1) return pointGeometry(path[0]!);
  return isArea(service) ? areaGeometry(path) : lineGeometry(path);
}

function isArea({ what, path }: Service): boolean {
  const [first, last] = [path[0]!, path.at(-1)!];
  const ring = path.length > 3 && first[0] === last[0] && first[1] === last[1];
  return what === 'floodZone' && ring && cutAtMeridian(path).length === 1;
}

function windingOf(service: Service): Readonly<Record<string, unknown>> {
  return isArea(service) && !isAnticlockwise(service.path) ? { [clockwiseProperty]: true } : {};
}

function paddockArea({ plane }: Survey, { ring, holes }: Paddock): Geometry {
  const toLonLats = (path: readonly Xy[]) => path.map((xy) => rounded(plane.toLonLat(xy)));
  return areaGeometry(toLonLats(ring), holes.map(toLonLats));
}

function areaFields({ areaM2 }: Paddock): Readonly<Record<string, unknown>> {
  return { areaHa: Math.round(areaM2 / 100) / 100 };
}

/** Every run of the network with the letter of its section. */
function* runs(project: Project, { survey, letters }: Writer): Generator<AnyFeature> {
  for (const [index, edge] of survey.network.edges.entries()) {
    if (edge.kind !== 'run') continue;
    const shape = survey.lines.get(edge.lineId)!;
    const { fromM, toM, lengthM, liveWires } = edge;
    const path = slice(shape, fromM, toM).map(rounded);
    const line = project.fenceLine.get(edge.lineId)!;
    const fields = {
      line: line.name,
      section: letters.get(index) ?? null,
      lengthM,
      overGroundM: survey.heights.slopeLengthM(edge.lineId, fromM, toM),
      liveWires,
      fed: survey.reach.edgeFed[index] === 1,
    };
    yield computed('run', edge.key, lineGeometry(path), fields);
  }
}

function computed(kind: 'run' | 'paddockOutline', id: string, geometry: Geometry | null, fields: object): AnyFeature {
  const properties = { [kindProperty]: kind, [idProperty]: id, ...fields };
  return { type: 'Feature', id: `${kind}:${id}`, properties, geometry };
}

/** A tenth of a millimetre: for what is computed, not for what was drawn. */
function rounded([lon, lat]: LonLat): LonLat {
  return [Math.round(lon * 1e9) / 1e9, Math.round(lat * 1e9) / 1e9];
}
