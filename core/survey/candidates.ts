import { turnAngleDeg } from '../geometry/vector.ts';
import { samePlace } from '../model/edits/support/switchPlace.ts';
import { placeKeyText } from '../model/placeKey.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { DivideSettings, LineEnd, Post, SwitchPlace } from '../model/things.ts';
import { buildNetwork } from '../network/buildNetwork.ts';
import { shortestWays } from '../network/shortestWays.ts';
import type { Network, Run } from '../network/types.ts';
import { placesNear } from '../shapes/touches.ts';
import { isPlaceOnEarth } from '../shapes/workingPlane.ts';
import { type Message, message } from '../words/message.ts';
import { geometryOfLine, placeInWords, switchSpot } from './switchPlaces.ts';
import type { Survey, SwitchCandidate } from './types.ts';

/**
 * A stretch of fence without a joint or a gateway gets places along it only where it is longer than this share of the
 * limit: on shorter ones a switch at an end does as well. An assumption of this project.
 */
export const longStretchShare = 0.25;
/** Where a fence turns this much or more its corner is taken to be strained; an assumption of this project. */
export const strainedCornerDeg = 20;
/** Corners nearer than this to each other, or to an end of their stretch, are passed over; an assumption of this project. */
export const leastBetweenCornersM = 50;

type Found = Pick<SwitchCandidate, 'key' | 'why' | 'place' | 'label' | 'cost'>;

/**
 * The places where a switch could go, in the order: supply side of each crossing, take-offs, strainers and corners of
 * long stretches, the user's own, and switches drawn anywhere else. Supply comes the shortest way from an energiser
 * with all switches closed.
 */
export function switchCandidates(project: Project, survey: Pick<Survey, 'plane' | 'lines'>): SwitchCandidate[] {
  const bare: Project = { ...project, switch: new Map() };
  const network = buildNetwork(bare);
  const settings = propertyOf(project).divide;
  const found = withoutDoubles(project, [
    ...supplySides(project, network, settings),
    ...takeOffs(project, survey, network, settings),
    ...placesAlong(project, survey, network, settings),
    ...addedPlaces(project, network, settings),
    ...drawnPlaces(project, settings),
  ]);
  const drawn = Map.groupBy(project.switch.values(), ({ place }) => thingOf(place));
  const { snapToleranceM } = propertyOf(project);
  return found.flatMap((candidate) => {
    const spot = switchSpot(project, survey.plane, candidate.place);
    if (!spot) return [];
    const beside = drawn.get(thingOf(candidate.place)) ?? [];
    const here = beside.filter(({ place }) => sameSpot(place, candidate.place, snapToleranceM));
    const rule = project.switchRule.get(candidate.key)?.rule ?? null;
    return [{ ...candidate, xy: spot.xy, rule, switchIds: here.map(({ id }) => id) }];
  });
}

function supplySides(project: Project, network: Network, { costs }: DivideSettings): Found[] {
  const { distanceM } = shortestWays(network);
  return network.edges.flatMap((edge): Found[] => {
    const gateway = edge.kind === 'crossing' ? project.gateway.get(edge.gatewayId) : undefined;
    if (!gateway) return [];
    const post: LineEnd = distanceM[edge.to]! < distanceM[edge.from]! ? 'end' : 'start';
    const place: SwitchPlace = { on: 'gateway', gatewayId: gateway.id, post };
    return [
      {
        key: placeKeyText({ on: 'gateway', gatewayId: gateway.id }),
        why: 'gateway',
        place,
        label: message('survey.switches.candidate.named', { name: gateway.name }),
        cost: costs.gateway,
      },
    ];
  });
}

/** Line ends at nodes where at least three ways meet; where two ends merely meet it is a corner. */
function takeOffs(
  project: Project,
  { lines }: Pick<Survey, 'lines'>,
  network: Network,
  { costs }: DivideSettings,
): Found[] {
  const found: Found[] = [];
  for (const [lineId, runs] of network.runsOfLine) {
    const line = project.fenceLine.get(lineId)!;
    const first = network.edges[runs[0]!] as Run;
    const last = network.edges[runs.at(-1)!] as Run;
    const { closed, lengthM } = lines.get(lineId)!;
    const ends: [LineEnd, number][] = [];
    if (!closed && first.fromM === 0) ends.push(['start', first.from]);
    if (!closed && last.toM === lengthM) ends.push(['end', last.to]);
    for (const [end, node] of ends) {
      if (waysAt(network, node) < 3) continue;
      const others = network.edgesAt[node]!.flatMap((index) => {
        const edge = network.edges[index]!;
        return edge.kind === 'run' && edge.lineId !== lineId ? [edge.lineId] : [];
      });
      const at = [...new Set(others)].map((id) => project.fenceLine.get(id)!.name);
      const label: Message =
        at.length === 0
          ? message('survey.switches.candidate.lineEnd', { line: line.name, end })
          : message('survey.switches.candidate.branch', { line: line.name, at });
      found.push({
        key: placeKeyText({ on: 'takeOff', lineId, end }),
        why: 'takeOff',
        place: { on: 'lineEnd', lineId, end },
        label,
        cost: costs.takeOff,
      });
    }
  }
  return found;
}

function waysAt({ edges, edgesAt }: Network, node: number): number {
  return edgesAt[node]!.reduce((ways, index) => ways + (edges[index]!.from === edges[index]!.to ? 2 : 1), 0);
}

/**
 * Strainers, then strained corners, of every stretch that is long enough to matter. One that the user has had a word on
 * stays a place, however short its stretch has become and whatever stands near.
 */
function placesAlong(
  project: Project,
  survey: Pick<Survey, 'plane' | 'lines'>,
  network: Network,
  { costs, maxSectionM }: DivideSettings,
): Found[] {
  const strainers = strainersByLine(project, survey);
  const hasWord = (key: string) => project.switchRule.has(key);
  const longM = longStretchShare * maxSectionM;
  // Without a word on any place the short ones need not be looked at.
  return stretchesOver(network, project.switchRule.size > 0 ? 0 : longM).flatMap(({ lineId, fromM, toM }) => {
    const isLong = toM - fromM > longM;
    const name = project.fenceLine.get(lineId)!.name;
    const taken = [fromM, toM];
    const posts = (strainers.get(lineId) ?? []).filter(({ atM }) => atM > fromM && atM < toM);
    const found = posts.flatMap(({ post, atM }): Found[] => {
      const key = placeKeyText({ on: 'strainerPost', postId: post.id, lineId });
      if (!isLong && !hasWord(key)) return [];
      taken.push(atM);
      const label = message('survey.switches.candidate.post', { post: post.name, line: name });
      return [{ key, why: 'strainer', place: { on: 'line', lineId, atM }, label, cost: costs.alongRun }];
    });
    const { xy, stationsM } = survey.lines.get(lineId)!;
    for (let vertex = 1; vertex < xy.length - 1; vertex++) {
      const atM = stationsM[vertex]!;
      if (atM <= fromM || atM >= toM) continue;
      const key = placeKeyText({ on: 'corner', lineId, vertex });
      const isNear = taken.some((otherM) => Math.abs(otherM - atM) < leastBetweenCornersM);
      if ((isNear || !isLong) && !hasWord(key)) continue;
      if (Math.abs(turnAngleDeg(xy[vertex - 1]!, xy[vertex]!, xy[vertex + 1]!)) < strainedCornerDeg) continue;
      taken.push(atM);
      const label = message('survey.switches.candidate.corner', { line: name, atM });
      found.push({
        key,
        why: 'strainer',
        place: { on: 'line', lineId, atM },
        label,
        cost: costs.alongRun,
      });
    }
    return found;
  });
}

interface Stretch {
  readonly lineId: string;
  readonly fromM: number;
  toM: number;
}

/** Pieces of line from one joint, gate post or end to the next, posts passed over, longer than `leastM`. */
function stretchesOver({ nodes, edges, edgesAt, runsOfLine }: Network, leastM: number): Stretch[] {
  const stretches: Stretch[] = [];
  for (const [lineId, runs] of runsOfLine) {
    let stretch: Stretch | null = null;
    for (const index of runs) {
      const { from, fromM, toM } = edges[index] as Run;
      const roles = nodes[from]!.roles;
      const passes = roles.length === 1 && roles[0] === 'post' && edgesAt[from]!.length === 2;
      if (stretch && passes) stretch.toM = toM;
      else {
        stretch = { lineId, fromM, toM };
        stretches.push(stretch);
      }
    }
  }
  return stretches.filter(({ fromM, toM }) => toM - fromM > leastM);
}

interface PostOnLine {
  readonly post: Post;
  readonly atM: number;
}

function strainersByLine(project: Project, { plane, lines }: Pick<Survey, 'plane' | 'lines'>) {
  const byLine = new Map<string, PostOnLine[]>();
  const { snapToleranceM } = propertyOf(project);
  const strainers = [...project.post.values()].filter(({ role, at }) => role === 'strainer' && isPlaceOnEarth(at));
  if (strainers.length === 0) return byLine;
  const places = strainers.map((post) => ({ post, xy: plane.toXy(post.at) }));
  for (const lineId of lines.keys()) {
    const geometry = geometryOfLine(project, plane, lineId);
    if (!geometry) continue;
    const [minX, minY, maxX, maxY] = geometry.box;
    const onLine = places.flatMap(({ post, xy }) => {
      const [x, y] = xy;
      const reach = snapToleranceM;
      if (x < minX - reach || x > maxX + reach || y < minY - reach || y > maxY + reach) return [];
      return placesNear(geometry, xy, reach).map(({ stationM }) => ({ post, atM: stationM }));
    });
    if (onLine.length > 0) byLine.set(lineId, onLine);
  }
  return byLine;
}

function addedPlaces(project: Project, { runsOfLine }: Network, { costs }: DivideSettings): Found[] {
  return [...project.switchCandidate.values()].flatMap(({ id, lineId, atM, cost }): Found[] => {
    if (!runsOfLine.has(lineId)) return [];
    const place: SwitchPlace = { on: 'line', lineId, atM };
    const label = placeInWords(project, place);
    return [
      { key: placeKeyText({ on: 'added', candidateId: id }), why: 'added', place, label, cost: cost ?? costs.alongRun },
    ];
  });
}

/** Where switches stand, whether or not something else suggests one there. */
function drawnPlaces(project: Project, { costs }: DivideSettings): Found[] {
  const costOf: Record<SwitchPlace['on'], number> = {
    gateway: costs.gateway,
    lineEnd: costs.takeOff,
    line: costs.alongRun,
    leadOut: costs.takeOff,
  };
  return [...project.switch.values()].map(({ id, name, place }): Found => {
    return {
      key: placeKeyText({ on: 'switch', switchId: id }),
      why: 'existing',
      place,
      label: message('survey.switches.candidate.named', { name }),
      cost: costOf[place.on],
    };
  });
}

/** The first of those that stand at one spot; under the key that has the user's word, if only another has it. */
function withoutDoubles(project: Project, found: readonly Found[]): Found[] {
  const { snapToleranceM } = propertyOf(project);
  const kept: Found[] = [];
  const ofThing = new Map<string, number[]>();
  for (const candidate of found) {
    const thing = thingOf(candidate.place);
    const beside = ofThing.get(thing) ?? [];
    const same = beside.find((index) => sameSpot(kept[index]!.place, candidate.place, snapToleranceM));
    if (same === undefined) {
      ofThing.set(thing, beside);
      beside.push(kept.length);
      kept.push(candidate);
    } else if (project.switchRule.has(candidate.key) && !project.switchRule.has(kept[same]!.key)) {
      kept[same] = { ...kept[same]!, key: candidate.key };
    }
  }
  return kept;
}

function thingOf(place: SwitchPlace): string {
  if (place.on === 'gateway') return place.gatewayId;
  return place.on === 'leadOut' ? place.leadOutId : place.lineId;
}

/** One place, or two along a line that are nearer than the snap tolerance. */
function sameSpot(a: SwitchPlace, b: SwitchPlace, toleranceM: number): boolean {
  if (a.on !== 'line' || b.on !== 'line') return samePlace(a, b);
  return a.lineId === b.lineId && Math.abs(a.atM - b.atM) <= toleranceM;
}
