import { earthAt } from '../../geometry/earth.ts';
import { largestOf } from '../../model/extremes.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { LonLat } from '../../model/things.ts';
import { message } from '../../words/message.ts';
import { boundsOf, middleOf } from '../preview/bounds.ts';
import type { PieceGroup } from '../preview/groups.ts';
import type { FeatureProblem, Preview, PreviewFeature } from '../preview/types.ts';
import { isDrawn } from './isDrawn.ts';

/** A piece of a file that lies far from the rest of it, or from the property. */
export interface Stray {
  readonly feature: PreviewFeature;
  readonly awayM: number;
  /** It lies at latitude 0, longitude 0: its receiver had no fix, most likely. */
  readonly noFix: boolean;
}

/** One of several places in a file that could be the property, all about as likely. */
export interface PossiblePlace {
  /** Its number among the preview's groups. */
  readonly group: number;
  readonly middle: LonLat;
  readonly pieces: number;
  readonly lines: number;
}

/** Where the pieces of a file lie, seen from the property that they come into. */
export interface Whereabouts {
  /** Where the property is, or would be. */
  readonly middle: LonLat;
  /** By key. Left out unless the user wants them in. */
  readonly strays: ReadonlyMap<string, Stray>;
  /** Places among which the user must choose first; fewer than two: there is nothing to choose. */
  readonly places: readonly PossiblePlace[];
  /** Nothing of the file is within reach of the drawing: how far off it is, metres. */
  readonly tooFarM: number | null;
}

/** A property can be about 100 km across: parts of it lie within this of its middle. */
const partM = 100_000;
/** No place of a property is further than this from its middle; as in `whyNotPoint`. */
export const reachM = 200_000;
/** What lies within this of the outermost thing drawn belongs to it. */
const besideM = 30_000;
/** A group of at least this share of the weightiest one is as likely the property. */
const rivalShare = 1 / 3;
/** Points alone are a part of the property where they are at least this share of the rest. */
const partShare = 1 / 10;

/**
 * Which pieces of a file belong to a property, and which are strays. Where things are drawn, the property's own place
 * decides. Else it is where most of the file is; `place`: the group that the user chose.
 */
export function whereaboutsOf(preview: Preview, project: Project, place: number | null): Whereabouts | null {
  const last = lastFound.get(preview);
  if (last?.project === project && last.place === place) return last.found;
  const found = findWhereabouts(preview, project, place);
  lastFound.set(preview, { project, place, found });
  return found;
}

/** The last answer for a file, as several parts of the window ask for it at once. */
const lastFound = new WeakMap<
  Preview,
  { readonly project: Project; readonly place: number | null; readonly found: Whereabouts | null }
>();

function findWhereabouts(preview: Preview, project: Project, place: number | null): Whereabouts | null {
  const groups = preview.groups.filter(({ noFix }) => !noFix);
  const [weightiest] = groups;
  if (!weightiest) return preview.groups[0] ? onlyAtNoFix(preview.groups[0]) : null;
  const { placed, origin } = propertyOf(project);
  if (placed && isDrawn(project)) return besideDrawing(preview, groups, project);
  const isNear = (group: PieceGroup, middle: LonLat) => nearestM(preview, group, middle) <= partM;
  const home =
    (place === null ? undefined : groups[place]) ??
    (placed ? groups.find((group) => isNear(group, origin)) : undefined) ??
    weightiest;
  const isPart = (group: PieceGroup) => group === home || (isNear(group, home.middle) && belongs(group, home));
  const others = groups.filter((group) => !isPart(group));
  const rivals =
    place === null && home === weightiest ? others.filter(({ weight }) => weight >= rivalShare * home.weight) : [];
  const places = rivals.length === 0 ? [] : [home, ...rivals].map((group) => placeOf(group, groups.indexOf(group)));
  const strays = straysOf(preview, [...others, ...preview.groups.filter(({ noFix }) => noFix)], home.middle);
  return { middle: middleOfPieces(preview, groups.filter(isPart)), strays, places, tooFarM: null };
}

/** Lines are a part of the property; points are, where they are not few. */
function belongs({ lines, weight }: PieceGroup, home: PieceGroup): boolean {
  return lines > 0 || weight >= partShare * home.weight;
}

function besideDrawing(preview: Preview, groups: readonly PieceGroup[], project: Project): Whereabouts {
  const { origin } = propertyOf(project);
  const besideOriginM = Math.min(reachM, drawnRadiusM(project) + besideM);
  const awayM = new Map(groups.map((group) => [group, nearestM(preview, group, origin)]));
  const isBeside = (group: PieceGroup) => awayM.get(group)! <= besideOriginM;
  const home = groups.find(isBeside) ?? groups.find((group) => awayM.get(group)! <= reachM);
  const noFix = preview.groups.filter((group) => group.noFix);
  if (!home)
    return {
      middle: origin,
      strays: new Map(),
      places: [],
      tooFarM: [...awayM.values()].reduce((least, away) => Math.min(least, away)),
    };
  const others = groups.filter((group) => {
    if (group === home || isBeside(group)) return false;
    return awayM.get(group)! > partM || !belongs(group, home);
  });
  return { middle: origin, strays: straysOf(preview, [...others, ...noFix], origin), places: [], tooFarM: null };
}

/** A file with nothing but such points is taken at its word. */
function onlyAtNoFix({ middle }: PieceGroup): Whereabouts {
  return { middle, strays: new Map(), places: [], tooFarM: null };
}

function placeOf({ middle, members, lines }: PieceGroup, group: number): PossiblePlace {
  return { group, middle, pieces: members.length, lines };
}

/** So many places of a group are measured at most. */
const mostMeasured = 200;

/** How near a group comes to a place, about. */
function nearestM({ features }: Preview, { members }: PieceGroup, to: LonLat): number {
  const pieceStep = Math.ceil(members.length / mostMeasured);
  let least = Infinity;
  for (let i = 0; i < members.length; i += pieceStep) {
    const { path } = features[members[i]!]!;
    const step = Math.ceil(path.length / Math.max(1, Math.floor(mostMeasured / members.length)));
    for (let at = 0; at < path.length; at += step) least = Math.min(least, earthAt(to).distanceM(to, path[at]!));
  }
  return least;
}

function straysOf({ features }: Preview, groups: readonly PieceGroup[], from: LonLat): Map<string, Stray> {
  const strays = new Map<string, Stray>();
  for (const { members, noFix } of groups) {
    for (const index of members) {
      const feature = features[index]!;
      // What this program wrote comes back as it was.
      if (!feature.ours)
        strays.set(feature.key, { feature, awayM: earthAt(from).distanceM(from, feature.path[0]!), noFix });
    }
  }
  return strays;
}

/** The middle of some groups; where they reach too far for one property, the median of their pieces. */
function middleOfPieces({ features }: Preview, groups: readonly PieceGroup[]): LonLat {
  return middleOfAll(groups.flatMap(({ members }) => members.map((index) => features[index]!)));
}

/** A property can be about 100 km across; what reaches further than this from its middle holds a way there. */
const radiusM = 60_000;

/** The middle of pieces that have a place, of which there is one at least. */
export function middleOfAll(pieces: readonly Pick<PreviewFeature, 'path'>[]): LonLat {
  const bounds = boundsOf(pieces)!;
  const middle = middleOf(bounds);
  const corners: LonLat[] = [
    [bounds[0], bounds[1]],
    [bounds[2], bounds[3]],
  ];
  if (corners.every((corner) => earthAt(middle).distanceM(middle, corner) <= radiusM)) return middle;
  const eastward = ([lon]: LonLat) => ((((lon - bounds[0]) % 360) + 360) % 360) as number;
  const places = pieces.flatMap(({ path }) => (path.length > 0 ? [path[path.length >> 1]!] : []));
  const lon = bounds[0] + median(places.map(eastward));
  return [lon > 180 ? lon - 360 : lon, median(places.map(([, lat]) => lat))];
}

function median(values: number[]): number {
  return values.sort((a, b) => a - b)[values.length >> 1]!;
}

/** How far from its middle anything is drawn, about. */
function drawnRadiusM(project: Project): number {
  const { origin } = propertyOf(project);
  const bounds = boundsOf([
    ...project.fenceLine.values(),
    ...project.service.values(),
    { path: [...project.post.values(), ...project.energiser.values()].map(({ at }) => at) },
  ]);
  if (!bounds) return 0;
  const [west, south, east, north] = bounds;
  const corners: LonLat[] = [
    [west, south],
    [west, north],
    [east, south],
    [east, north],
  ];
  return Math.min(reachM, largestOf(corners.map((corner) => earthAt(origin).distanceM(origin, corner))));
}

/** What is said of a stray, as a problem of its own. */
export function strayProblem({ feature, awayM, noFix }: Stray, project: Project): FeatureProblem {
  const from = isDrawn(project) ? 'property' : 'rest';
  const why = noFix ? message('exchange.taken.noFix') : message('exchange.taken.far', { awayM, from });
  return {
    index: feature.index,
    name: feature.name,
    why,
    whatToDo: message('exchange.remedy.leftOutUnless'),
  };
}
