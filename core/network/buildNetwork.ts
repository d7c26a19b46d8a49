import Flatbush from 'flatbush';
import { pathLengthM } from '../geometry/geodesic.ts';
import type { LocalPlane } from '../geometry/localPlane.ts';
import { xyDistanceM } from '../geometry/plane/xyDistance.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { CutOutSwitch, Energiser, FenceLine, LeadOut, LineEnd, Property } from '../model/things.ts';
import { crossingLengths } from './crossingLengths.ts';
import { type GatewaySpan, gatewaySpan } from './gatewaySpan.ts';
import { Joints, unusedKey } from './joints.ts';
import { LineChain, type Stop } from './lineChain.ts';
import { leastLengthM, lonLatAt, pathGeometry } from './pathGeometry.ts';
import { placesNear, type Touch, touchesBetween, touchesOfSelf } from './touches.ts';
import type { Network, NetworkEdge, NetworkProblem, NetworkProblemCode, Source } from './types.ts';
import { isPlaceOnEarth, workingPlane } from './workingPlane.ts';

/**
 * The live fences of a project as an electrical network, by these rules:
 *
 * - An end or vertex within the snap tolerance of another live line, or of another part of its own, joins there. Lines
 *   that cross where neither has a vertex do not join.
 * - The wires of a line stop at the posts of its gateways. What touches a gate post joins there; what touches inside
 *   the opening joins nothing. Only a crossing bridges the opening.
 * - A switch at a gate post stands in the run outside the opening (run, switch, post); one at a line's end between the
 *   joint and the line; one along a line cuts it there, and what joins the line at that very place stays with the side
 *   of its start; one at a lead-out between the cable and the fence.
 * - A lead-out joins every live line within the tolerance of its last vertex. An energiser without a lead-out joins
 *   those within the tolerance of where it stands.
 * - Strainers and angle posts on a line are nodes of it, and join nothing by themselves.
 *
 * What cannot be taken at its word is in `problems`. Lengths are geodesic; between vertices places are linear in the
 * working plane. What two paths have to do with each other is kept with the paths, so that after an edit only what
 * changed is worked out again.
 */
export function buildNetwork(project: Project): Network {
  return new Builder(project).build();
}

class Builder {
  readonly #project: Project;
  readonly #property: Property;
  readonly #plane: LocalPlane;
  readonly #toleranceM: number;
  readonly #joints = new Joints();
  readonly #problems: NetworkProblem[] = [];
  readonly #chains: LineChain[] = [];
  readonly #chainOf = new Map<string, LineChain>();
  #index: Flatbush | null = null;
  /** Edges between joints; keys of runs are given at the end, when their nodes are known. */
  readonly #edges: NetworkEdge[] = [];
  readonly #leadOutSwitches = new Map<string, CutOutSwitch[]>();

  constructor(project: Project) {
    this.#project = project;
    this.#property = propertyOf(project);
    this.#plane = workingPlane(this.#property);
    const { snapToleranceM } = this.#property;
    this.#toleranceM = snapToleranceM > 0 && Number.isFinite(snapToleranceM) ? snapToleranceM : 0;
  }

  build(): Network {
    this.#layLines();
    this.#joinLines();
    this.#markPosts();
    this.#placeSwitches();
    const sources = this.#connectEnergisers();
    for (const chain of this.#chains) this.#emitRuns(chain);
    this.#bridgeGateways();
    return this.#finish(sources);
  }

  #report(code: NetworkProblemCode, thingIds: readonly string[], at: LonLat | null, lengthM: number | null = null) {
    this.#problems.push({ code, thingIds, at, lengthM });
  }

  // Lines and the openings of their gateways

  #layLines(): void {
    const spansOf = this.#spansByLine();
    for (const line of this.#project.fenceLine.values()) {
      const geometry = pathGeometry(line.path, this.#plane);
      if (!geometry) {
        this.#report('lineNotOnEarth', [line.id], line.path.find(isPlaceOnEarth) ?? null);
      } else if (geometry.lengthM <= leastLengthM) {
        this.#report('lineWithoutLength', [line.id], line.path[0]!);
      } else if (line.live) {
        const spans = this.#usableSpans(spansOf.get(line.id) ?? []);
        const chain = new LineChain(line, geometry, this.#liveWires(line), spans, this.#joints, this.#toleranceM);
        this.#chains.push(chain);
        this.#chainOf.set(line.id, chain);
      }
    }
    if (this.#chains.length === 0) return;
    const index = new Flatbush(this.#chains.length);
    for (const { geometry } of this.#chains) index.add(...geometry.box);
    index.finish();
    this.#index = index;
  }

  #liveWires(line: FenceLine): number {
    const liveWires = this.#project.fenceType.get(line.typeId)?.liveWires ?? 0;
    if (liveWires >= 1) return liveWires;
    this.#report('lineWithoutLiveWires', [line.id], line.path[0]!);
    return 1;
  }

  #spansByLine(): Map<string, GatewaySpan[]> {
    const spansOf = new Map<string, GatewaySpan[]>();
    for (const gateway of this.#project.gateway.values()) {
      const line = this.#project.fenceLine.get(gateway.lineId);
      const geometry = line && pathGeometry(line.path, this.#plane);
      if (!geometry) {
        this.#report('gatewayWithoutLine', [gateway.id], null);
        continue;
      }
      const span = gatewaySpan(gateway, geometry);
      const spans = spansOf.get(gateway.lineId);
      if (spans) spans.push(span);
      else spansOf.set(gateway.lineId, [span]);
      const at = span.startPostAt;
      if (span.fault === 'widerThanLine') this.#report('gatewayWiderThanLine', [gateway.id, line.id], at, span.faultM);
      else if (span.faultM > 0) this.#report('gatewayBeyondLine', [gateway.id, line.id], at, span.faultM);
      else if (span.fault === 'noOpening') this.#report('gatewayWithoutWidth', [gateway.id], at);
    }
    return spansOf;
  }

  /** Those with an opening, in order along the line. */
  #usableSpans(all: readonly GatewaySpan[]): GatewaySpan[] {
    const spans = all.filter((span) => span.openings.length > 0).sort((a, b) => a.fromM - b.fromM || a.toM - b.toM);
    const openings = spans
      .flatMap((span) => span.openings.map(([fromM, toM]) => ({ span, fromM, toM })))
      .sort((a, b) => a.fromM - b.fromM);
    let furthest = openings[0];
    for (const opening of openings.slice(1)) {
      const overlapM = Math.min(furthest!.toM, opening.toM) - opening.fromM;
      if (overlapM > Math.max(this.#toleranceM, leastLengthM) && furthest!.span !== opening.span) {
        const ids = [furthest!.span.gateway.id, opening.span.gateway.id];
        this.#report('gatewaysOverlap', ids, opening.span.startPostAt, overlapM);
      }
      if (opening.toM > furthest!.toM) furthest = opening;
    }
    return spans;
  }

  // What touches what

  #joinLines(): void {
    for (const [i, a] of this.#chains.entries()) {
      for (const touch of touchesOfSelf(a.geometry, this.#toleranceM)) this.#joinAt(a, a, touch);
      for (const j of this.#chainsNear(a.geometry.box)) {
        if (j <= i) continue;
        const b = this.#chains[j]!;
        for (const touch of touchesBetween(a.geometry, b.geometry, this.#toleranceM)) this.#joinAt(a, b, touch);
      }
    }
  }

  #joinAt(a: LineChain, b: LineChain, touch: Touch): void {
    const closing = a === b && a.geometry.closed && touch.aM === 0 && touch.bM === a.geometry.lengthM;
    if (closing) return;
    const key = `join:${a.line.id}:${b.line.id}`;
    const onA = a.touch(touch.aM, touch.xy, this.#toleranceM, key);
    const onB = b.touch(touch.bM, touch.xy, this.#toleranceM, key);
    if ('gateway' in onA) this.#report('touchInOpening', [onA.gateway.id, b.line.id], touch.at);
    else if ('gateway' in onB) this.#report('touchInOpening', [onB.gateway.id, a.line.id], touch.at);
    else {
      this.#joints.join(onA.joint, onB.joint);
      this.#joints.addRole(onA.joint, 'junction');
    }
  }

  #chainsNear(box: readonly [number, number, number, number]): number[] {
    const reach = this.#toleranceM;
    return this.#index?.search(box[0] - reach, box[1] - reach, box[2] + reach, box[3] + reach) ?? [];
  }

  /** Joints of all live lines within the tolerance of a point; the openings that it lies in are handed to `inOpening`. */
  #touchesAt(point: Xy, key: string, inOpening: (span: GatewaySpan) => void): number[] {
    const joints: number[] = [];
    for (const i of this.#chainsNear([...point, ...point])) {
      const chain = this.#chains[i]!;
      for (const { stationM } of placesNear(chain.geometry, point, this.#toleranceM)) {
        const stop = chain.touch(stationM, point, this.#toleranceM, key);
        if ('gateway' in stop) inOpening(stop);
        else joints.push(stop.joint);
      }
    }
    return joints;
  }

  #markPosts(): void {
    for (const post of this.#project.post.values()) {
      if (post.role === 'other' || !isPlaceOnEarth(post.at)) continue;
      const joints = this.#touchesAt(this.#plane.toXy(post.at), `post:${post.id}`, () => {});
      for (const joint of joints) this.#joints.addRole(joint, 'post');
    }
  }

  // Switches

  #placeSwitches(): void {
    const taken = new Map<string, string>();
    for (const cutOut of this.#project.switch.values()) {
      const { place } = cutOut;
      if (place.on === 'leadOut') {
        this.#placeLeadOutSwitch(cutOut, place.leadOutId, taken);
        continue;
      }
      const spot = this.#spotOf(cutOut);
      if (!spot) continue;
      const { chain, stop, side } = spot;
      this.#reportDoubled(cutOut, `${chain.line.id}:${stop.stationM}:${stop.rank}:${side}`, taken);
      const { wire, inner } = chain.cut(stop, side, cutOut.id);
      const along = place.on === 'line' && side === 'above';
      this.#addSwitch(cutOut, along ? inner : wire, along ? wire : inner);
    }
  }

  #reportDoubled(cutOut: CutOutSwitch, spot: string, taken: Map<string, string>): void {
    const other = taken.get(spot);
    if (other) this.#report('switchDoubled', [other, cutOut.id], null);
    else taken.set(spot, cutOut.id);
  }

  #placeLeadOutSwitch(cutOut: CutOutSwitch, leadOutId: string, taken: Map<string, string>): void {
    if (!this.#project.leadOut.has(leadOutId)) {
      this.#report('switchNowhere', [cutOut.id], null);
      return;
    }
    this.#reportDoubled(cutOut, `leadOut:${leadOutId}`, taken);
    const others = this.#leadOutSwitches.get(leadOutId);
    if (others) others.push(cutOut);
    else this.#leadOutSwitches.set(leadOutId, [cutOut]);
  }

  #spotOf({ id, place }: CutOutSwitch): { chain: LineChain; stop: Stop; side: 'below' | 'above' } | null {
    if (place.on === 'leadOut') return null;
    const lineId = place.on === 'gateway' ? this.#project.gateway.get(place.gatewayId)?.lineId : place.lineId;
    const line = lineId === undefined ? undefined : this.#project.fenceLine.get(lineId);
    const chain = line && this.#chainOf.get(line.id);
    if (!chain) {
      this.#report(line && !line.live ? 'switchOnDeadLine' : 'switchNowhere', [id], line?.path[0] ?? null);
      return null;
    }
    if (place.on === 'gateway') return this.#besidePost(id, chain, place.gatewayId, place.post);
    if (place.on === 'lineEnd') return this.#atLineEnd(id, chain, place.end);
    const { atM } = place;
    const { lengthM } = chain.geometry;
    const reachM = Math.max(this.#toleranceM, leastLengthM);
    if (!(atM >= -reachM && atM <= lengthM + reachM)) {
      this.#report('switchNowhere', [id, chain.line.id], lonLatAt(chain.geometry, atM > lengthM ? lengthM : 0));
      return null;
    }
    const post = chain.postAt(atM);
    if (post) return this.#besidePost(id, chain, post.gatewayId, post.post);
    const opening = chain.openingAt(atM);
    if (opening) {
      this.#report('switchInOpening', [id, opening.gateway.id], lonLatAt(chain.geometry, atM));
      return null;
    }
    if (atM <= leastLengthM) return this.#atLineEnd(id, chain, 'start');
    if (atM >= lengthM - leastLengthM) return this.#atLineEnd(id, chain, 'end');
    return { chain, stop: chain.stopAt(atM, `switch:${id}:joint`), side: 'above' };
  }

  #besidePost(switchId: string, chain: LineChain, gatewayId: string, post: LineEnd) {
    const stop = chain.posts.get(gatewayId)?.[post];
    if (!stop) this.#report('switchNowhere', [switchId, gatewayId], null);
    return stop ? { chain, stop, side: post === 'start' ? ('below' as const) : ('above' as const) } : null;
  }

  #atLineEnd(switchId: string, chain: LineChain, end: LineEnd) {
    if (!chain.ends) {
      this.#report('switchInOpening', [switchId, chain.openingAt(0)!.gateway.id], chain.geometry.path[0]!);
      return null;
    }
    return { chain, stop: chain.ends[end], side: end === 'start' ? ('above' as const) : ('below' as const) };
  }

  #addSwitch({ id, normally }: CutOutSwitch, from: number, to: number): void {
    this.#edges.push({ kind: 'switch', key: `switch:${id}`, from, to, switchId: id, normally });
  }

  // Energisers and their lead-outs

  #connectEnergisers(): (Omit<Source, 'node'> & { joint: number | null })[] {
    const leadOuts = Map.groupBy(this.#project.leadOut.values(), (leadOut) => leadOut.energiserId);
    for (const [energiserId, stray] of leadOuts) {
      if (this.#project.energiser.has(energiserId)) continue;
      for (const { id, path } of stray) this.#report('leadOutWithoutEnergiser', [id], path[0] ?? null);
    }
    return [...this.#project.energiser.values()].map((energiser) => {
      const joint = this.#connect(energiser, leadOuts.get(energiser.id) ?? []);
      if (joint === null && isPlaceOnEarth(energiser.at)) {
        this.#report('energiserTouchesNothing', [energiser.id], energiser.at);
      }
      return { energiserId: energiser.id, joint };
    });
  }

  /** The energiser's joint, or null where neither it nor any of its lead-outs touches a live line. */
  #connect(energiser: Energiser, leadOuts: readonly LeadOut[]): number | null {
    const { id, at } = energiser;
    if (!isPlaceOnEarth(at)) {
      this.#report('energiserNotOnEarth', [id], null);
      return null;
    }
    const xy = this.#plane.toXy(at);
    const standsAt = () => this.#joints.add('energiser', `energiser:${id}`, xy, () => at);
    if (leadOuts.length === 0) {
      const touched = this.#touchesAt(xy, `energiser:${id}`, (span) => {
        this.#report('touchInOpening', [span.gateway.id, id], at);
      });
      if (touched.length === 0) return null;
      const joint = standsAt();
      for (const other of touched) this.#joints.join(joint, other);
      return joint;
    }
    let joint: number | null = null;
    for (const leadOut of leadOuts) {
      const end = this.#leadOutEnd(leadOut, xy);
      if (end === null) continue;
      joint ??= standsAt();
      this.#runLeadOut(leadOut, joint, end);
    }
    return joint;
  }

  /** The joint where a lead-out meets the fence, or null. */
  #leadOutEnd({ id, path, energiserId }: LeadOut, energiserXy: Xy): number | null {
    const end = path.at(-1);
    if (!end || !path.every(isPlaceOnEarth)) {
      this.#report('leadOutNotOnEarth', [id], null);
      return null;
    }
    const startsAwayM = xyDistanceM(this.#plane.toXy(path[0]!), energiserXy);
    if (startsAwayM > this.#toleranceM + leastLengthM) {
      this.#report('leadOutStartsElsewhere', [id, energiserId], path[0]!, startsAwayM);
    }
    const xy = this.#plane.toXy(end);
    const touched = this.#touchesAt(xy, `leadOut:${id}`, (span) => {
      this.#report('touchInOpening', [span.gateway.id, id], end);
    });
    if (touched.length === 0) {
      this.#report('leadOutTouchesNothing', [id, energiserId], end);
      return null;
    }
    const joint = this.#joints.add('leadOut', `leadOut:${id}`, xy, () => end);
    for (const other of touched) this.#joints.join(joint, other);
    return joint;
  }

  #runLeadOut({ id, path }: LeadOut, energiser: number, end: number): void {
    const at = path.at(-1)!;
    let cable = end;
    for (const cutOut of this.#leadOutSwitches.get(id) ?? []) {
      const inner = cable;
      cable = this.#joints.add('switch', `switch:${cutOut.id}`, this.#joints.xyOf(end), () => at);
      this.#joints.addRole(inner, 'switch');
      this.#addSwitch(cutOut, cable, inner);
    }
    const cableLengthM = pathLengthM(path);
    this.#edges.push({
      kind: 'leadOut',
      key: `leadOut:${id}`,
      from: energiser,
      to: cable,
      leadOutId: id,
      cableLengthM,
    });
  }

  // Edges

  #emitRuns(chain: LineChain): void {
    const { line, liveWires } = chain;
    chain.emit({
      run: (from, to, fromM, toM) => {
        this.#edges.push({
          kind: 'run',
          key: '',
          from,
          to,
          lineId: line.id,
          fromM,
          toM,
          lengthM: toM - fromM,
          liveWires,
        });
      },
    });
  }

  #bridgeGateways(): void {
    const bridged = new Map<string, string>();
    for (const crossing of this.#project.crossing.values()) {
      const { id, gatewayId } = crossing;
      const gateway = this.#project.gateway.get(gatewayId);
      if (!gateway) {
        this.#report('crossingWithoutGateway', [id], null);
        continue;
      }
      const chain = this.#chainOf.get(gateway.lineId);
      const posts = chain?.posts.get(gatewayId);
      const other = bridged.get(gatewayId);
      if (other) {
        const at = chain ? lonLatAt(chain.geometry, gateway.atM) : null;
        this.#report('crossingDoubled', [other, id, gatewayId], at);
        continue;
      }
      bridged.set(gatewayId, id);
      if (!chain || !posts) continue;
      const { liveCableM } = crossingLengths(crossing, gatewaySpan(gateway, chain.geometry), this.#property.crossings);
      const [from, to] = [posts.start.joint, posts.end.joint];
      const key = `crossing:${id}`;
      this.#edges.push({ kind: 'crossing', key, from, to, gatewayId, crossingId: id, cableLengthM: liveCableM });
    }
  }

  #finish(sources: readonly { energiserId: string; joint: number | null }[]): Network {
    const { nodes, nodeOf } = this.#joints.number();
    const used = new Set<string>();
    const edges: NetworkEdge[] = [];
    const edgesAt: number[][] = nodes.map(() => []);
    const runsOfLine = new Map<string, number[]>();
    const edgeOfSwitch = new Map<string, number>();
    for (const [index, draft] of this.#edges.entries()) {
      const from = nodeOf[draft.from]!;
      const to = nodeOf[draft.to]!;
      const runKey = draft.kind === 'run' ? `run:${draft.lineId}:${nodes[from]!.key}~${nodes[to]!.key}` : draft.key;
      edges.push({ ...draft, key: unusedKey(runKey, used), from, to });
      edgesAt[from]!.push(index);
      if (to !== from) edgesAt[to]!.push(index);
      if (draft.kind === 'run') {
        const runs = runsOfLine.get(draft.lineId);
        if (runs) runs.push(index);
        else runsOfLine.set(draft.lineId, [index]);
      } else if (draft.kind === 'switch') {
        edgeOfSwitch.set(draft.switchId, index);
        if (from === to) this.#report('switchBypassed', [draft.switchId], nodes[from]!.at);
      }
    }
    const postsOfGateway = new Map<string, readonly [number, number]>();
    for (const chain of this.#chains) {
      for (const [gatewayId, { start, end }] of chain.posts) {
        postsOfGateway.set(gatewayId, [nodeOf[start.joint]!, nodeOf[end.joint]!]);
      }
    }
    return {
      nodes,
      edges,
      edgesAt,
      sources: sources.map(({ energiserId, joint }) => {
        return { energiserId, node: joint === null ? null : nodeOf[joint]! };
      }),
      runsOfLine,
      edgeOfSwitch,
      postsOfGateway,
      problems: this.#problems,
    };
  }
}
