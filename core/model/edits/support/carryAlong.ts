import { nearestOn } from '../../../shapes/measuredPath.ts';
import { planeOf } from '../../../shapes/workingPlane.ts';
import { type PlaceKey, parsePlaceKey, placeKeyText } from '../../placeKey.ts';
import { type Project, putAll, removeAll } from '../../project.ts';
import type {
  Crossing,
  CutOutSwitch,
  FenceLine,
  Gateway,
  LineEnd,
  SwitchCandidatePlace,
  SwitchPlace,
  SwitchRule,
  Thing,
} from '../../things.ts';
import { crossingOf } from './find.ts';
import { pathIn, sameVertexM } from './path.ts';

/** Where a stretch of the old line lies now. It runs the other way where `newFromM` is larger than `newToM`. */
export interface Stretch {
  readonly fromM: number;
  readonly toM: number;
  readonly lineId: string;
  readonly newFromM: number;
  readonly newToM: number;
}

/** What became of a line: its stretches in order, and where each of its vertices went (null: gone). */
export interface Relaying {
  readonly line: FenceLine;
  readonly stretches: readonly Stretch[];
  readonly vertexTo: (index: number) => { readonly lineId: string; readonly index: number } | null;
}

/**
 * Moves everything that is anchored to a line to where the line now lies: gateways, switches, added switch places and
 * the user's word on places. What stood on an unchanged segment stays at the same point; what stood on a stretched one
 * keeps its share of it. Where a line now runs the other way, start and end, left and right change hands. The new
 * lines must be in `project` already. Widths never change; a gateway is kept between the ends of its line.
 */
export function carryAlong(project: Project, relaying: Relaying): Project {
  const lengths = new Map<string, number>();
  const lengthOf = (lineId: string): number => {
    const known = lengths.get(lineId);
    if (known !== undefined) return known;
    const lengthM = pathIn(project, project.fenceLine.get(lineId)!.path).lengthM;
    lengths.set(lineId, lengthM);
    return lengthM;
  };
  const carry: Carry = { project, relaying, lengthOf, follow: (atM) => follow(relaying.stretches, atM) };
  const changed: Thing[] = [];
  const gone: Thing[] = [];
  const turned = new Set<string>();
  for (const gateway of project.gateway.values()) {
    if (gateway.lineId !== relaying.line.id) continue;
    const now = carryGateway(carry, gateway);
    if (now.turned) {
      turned.add(gateway.id);
      const crossing = crossingOf(project, gateway.id);
      if (crossing) changed.push(turnCrossing(crossing));
    }
    if (now.gateway !== gateway) changed.push(now.gateway);
  }
  for (const cutOut of project.switch.values()) {
    const now = carrySwitch(carry, cutOut, turned);
    if (now !== cutOut) changed.push(now);
  }
  for (const candidate of project.switchCandidate.values()) {
    const now = carryCandidate(carry, candidate);
    if (now !== candidate) changed.push(now);
  }
  const rules = [...project.switchRule.values()].map((rule) => ({ rule, now: carryRule(carry, rule) }));
  // Of two that come to one place, as of a post where two lines are joined, the one that was there already stays.
  const taken = new Set(rules.flatMap(({ rule, now }) => (now === rule ? [rule.id] : [])));
  for (const { rule, now } of rules) {
    if (now === rule) continue;
    gone.push(rule);
    if (!now || taken.has(now.id)) continue;
    taken.add(now.id);
    changed.push(now);
  }
  return putAll(removeAll(project, gone), changed);
}

interface Carry {
  readonly project: Project;
  readonly relaying: Relaying;
  readonly lengthOf: (lineId: string) => number;
  readonly follow: (atM: number) => Place;
}

interface Place {
  readonly lineId: string;
  readonly atM: number;
  readonly turned: boolean;
}

/** Where a station of the old line lies now; one past the ends falls to the nearest stretch. */
function follow(stretches: readonly Stretch[], atM: number): Place {
  const stretch = stretches.find((s) => atM >= s.fromM && atM <= s.toM) ?? nearestStretch(stretches, atM);
  const { fromM, toM, lineId, newFromM, newToM } = stretch;
  const turned = newFromM > newToM;
  if (fromM === newFromM && toM === newToM) return { lineId, atM: Math.min(toM, Math.max(fromM, atM)), turned };
  const share = toM > fromM ? Math.min(1, Math.max(0, (atM - fromM) / (toM - fromM))) : 0;
  return { lineId, atM: newFromM + share * (newToM - newFromM), turned };
}

function nearestStretch(stretches: readonly Stretch[], atM: number): Stretch {
  const away = ({ fromM, toM }: Stretch) => Math.max(fromM - atM, atM - toM);
  return stretches.reduce((best, stretch) => (away(stretch) < away(best) ? stretch : best));
}

function carryGateway(carry: Carry, gateway: Gateway): { gateway: Gateway; turned: boolean } {
  const { lineId, atM: wantedM, turned } = carry.follow(gateway.atM);
  const atM = keptWithin(wantedM, gateway.widthM, carry.lengthOf(lineId));
  if (!turned) {
    const same = lineId === gateway.lineId && atM === gateway.atM;
    return { gateway: same ? gateway : { ...gateway, lineId, atM }, turned };
  }
  const hungFrom = otherEnd(gateway.hungFrom);
  return { gateway: { ...gateway, lineId, atM, hungFrom, opens: otherSide(gateway.opens) }, turned };
}

/** The centre of an opening, moved as little as needed so that both posts stand on the line. */
function keptWithin(atM: number, widthM: number, lengthM: number): number {
  if (lengthM < widthM) return lengthM / 2;
  return Math.min(lengthM - widthM / 2, Math.max(widthM / 2, atM));
}

function turnCrossing(crossing: Crossing): Crossing {
  return { ...crossing, bowSide: otherSide(crossing.bowSide) };
}

function carrySwitch(carry: Carry, cutOut: CutOutSwitch, turned: ReadonlySet<string>): CutOutSwitch {
  const { place } = cutOut;
  const lineId = carry.relaying.line.id;
  if (place.on === 'gateway' && turned.has(place.gatewayId)) {
    return { ...cutOut, place: { ...place, post: otherEnd(place.post) } };
  }
  if (place.on !== 'line' && place.on !== 'lineEnd') return cutOut;
  if (place.lineId !== lineId) return cutOut;
  const now = place.on === 'line' ? onLineOrEnd(carry, carry.follow(place.atM)) : endPlace(carry, place.end);
  return exactlySame(now, place) ? cutOut : { ...cutOut, place: now };
}

function exactlySame(a: SwitchPlace, b: SwitchPlace): boolean {
  if (a.on === 'line') return b.on === 'line' && a.lineId === b.lineId && a.atM === b.atM;
  return a.on === 'lineEnd' && b.on === 'lineEnd' && a.lineId === b.lineId && a.end === b.end;
}

/** A switch that now stands at an end of its line is a switch at that end. */
function onLineOrEnd(carry: Carry, { lineId, atM }: Pick<Place, 'lineId' | 'atM'>): SwitchPlace {
  if (atM <= sameVertexM) return { on: 'lineEnd', lineId, end: 'start' };
  if (carry.lengthOf(lineId) - atM <= sameVertexM) return { on: 'lineEnd', lineId, end: 'end' };
  return { on: 'line', lineId, atM };
}

/** Where the point is now that was an end of the line; no longer an end where the line was lengthened or joined there. */
function endPlace(carry: Carry, end: LineEnd): SwitchPlace {
  const { stretches } = carry.relaying;
  const stretch = end === 'start' ? stretches[0]! : stretches.at(-1)!;
  const atM = end === 'start' ? stretch.newFromM : stretch.newToM;
  return onLineOrEnd(carry, { lineId: stretch.lineId, atM });
}

function carryCandidate(carry: Carry, candidate: SwitchCandidatePlace): SwitchCandidatePlace {
  if (candidate.lineId !== carry.relaying.line.id) return candidate;
  const { lineId, atM } = carry.follow(candidate.atM);
  return lineId === candidate.lineId && atM === candidate.atM ? candidate : { ...candidate, lineId, atM };
}

/** The user's word on a place follows it; null where that place is no more. */
function carryRule(carry: Carry, rule: SwitchRule): SwitchRule | null {
  const { line, vertexTo } = carry.relaying;
  const key = parsePlaceKey(rule.id);
  if (!key || !('lineId' in key) || key.lineId !== line.id) return rule;
  switch (key.on) {
    case 'takeOff': {
      const place = endPlace(carry, key.end);
      return place.on === 'lineEnd' ? renamed(rule, { on: 'takeOff', lineId: place.lineId, end: place.end }) : null;
    }
    case 'corner': {
      const to = vertexTo(key.vertex);
      return to ? renamed(rule, { on: 'corner', lineId: to.lineId, vertex: to.index }) : null;
    }
    case 'strainerPost':
      return renamed(rule, { ...key, lineId: lineOfPost(carry, key.postId) });
  }
}

/** The line on which a post of the old line stands now. */
function lineOfPost({ project, relaying, follow: to }: Carry, postId: string): string {
  const { line, stretches } = relaying;
  const post = project.post.get(postId);
  const first = stretches[0]!.lineId;
  if (!post || stretches.every(({ lineId }) => lineId === first)) return first;
  return to(nearestOn(pathIn(project, line.path), planeOf(project).toXy(post.at)).stationM).lineId;
}

function renamed(rule: SwitchRule, key: PlaceKey): SwitchRule {
  const id = placeKeyText(key);
  return id === rule.id ? rule : { ...rule, id };
}

export function otherEnd(end: LineEnd): LineEnd {
  return end === 'start' ? 'end' : 'start';
}

export function otherSide(side: 'left' | 'right'): 'left' | 'right' {
  return side === 'left' ? 'right' : 'left';
}
