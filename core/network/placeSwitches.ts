import type { CutOutSwitch, LineEnd } from '../model/things.ts';
import { leastLengthM, lonLatAt } from '../shapes/measuredPath.ts';
import type { LineChain, Stop } from './lineChain.ts';
import type { NetworkDraft } from './networkDraft.ts';

/** Where a switch goes: on one side of a stop of a line. */
interface Spot {
  readonly chain: LineChain;
  readonly stop: Stop;
  readonly side: 'below' | 'above';
}

/** Puts the switches into the lines; gives those at lead-outs, by lead-out, for `connectEnergisers`. */
export function placeSwitches(draft: NetworkDraft): ReadonlyMap<string, readonly CutOutSwitch[]> {
  const atLeadOuts = new Map<string, CutOutSwitch[]>();
  const taken = new Map<string, string>();
  for (const cutOut of draft.project.switch.values()) {
    const { place } = cutOut;
    if (place.on === 'leadOut') {
      if (!draft.project.leadOut.has(place.leadOutId)) draft.report('switchNowhere', [cutOut.id], null);
      else {
        take(draft, cutOut, `leadOut:${place.leadOutId}`, taken);
        const others = atLeadOuts.get(place.leadOutId);
        if (others) others.push(cutOut);
        else atLeadOuts.set(place.leadOutId, [cutOut]);
      }
      continue;
    }
    const spot = spotOf(draft, cutOut);
    if (!spot) continue;
    const { chain, stop, side } = spot;
    take(draft, cutOut, `${chain.line.id}:${stop.stationM}:${stop.rank}:${side}`, taken);
    const { wire, inner } = chain.cut(stop, side, cutOut.id);
    // Along a line `from` is the side of its start.
    if (place.on === 'line' && side === 'above') addSwitch(draft, cutOut, inner, wire);
    else addSwitch(draft, cutOut, wire, inner);
  }
  return atLeadOuts;
}

export function addSwitch(draft: NetworkDraft, { id, normally }: CutOutSwitch, from: number, to: number): void {
  draft.edges.push({ kind: 'switch', key: `switch:${id}`, from, to, switchId: id, normally });
}

function take(draft: NetworkDraft, { id }: CutOutSwitch, spot: string, taken: Map<string, string>): void {
  const other = taken.get(spot);
  if (other) draft.report('switchDoubled', [other, id], null);
  else taken.set(spot, id);
}

function spotOf(draft: NetworkDraft, { id, place }: CutOutSwitch): Spot | null {
  if (place.on === 'leadOut') return null;
  const { project } = draft;
  const lineId = place.on === 'gateway' ? project.gateway.get(place.gatewayId)?.lineId : place.lineId;
  const line = lineId === undefined ? undefined : project.fenceLine.get(lineId);
  const chain = line && draft.chainOf.get(line.id);
  if (!chain) {
    draft.report(line && !line.live ? 'switchOnDeadLine' : 'switchNowhere', [id], line?.path[0] ?? null);
    return null;
  }
  if (place.on === 'gateway') return besidePost(draft, id, chain, place.gatewayId, place.post);
  return place.on === 'lineEnd' ? atLineEnd(draft, id, chain, place.end) : along(draft, id, chain, place.atM);
}

function besidePost(draft: NetworkDraft, id: string, chain: LineChain, gatewayId: string, post: LineEnd): Spot | null {
  const stop = chain.posts.get(gatewayId)?.[post];
  if (stop) return { chain, stop, side: post === 'start' ? 'below' : 'above' };
  draft.report('switchNowhere', [id, gatewayId], null);
  return null;
}

function atLineEnd(draft: NetworkDraft, id: string, chain: LineChain, end: LineEnd): Spot | null {
  if (chain.ends) return { chain, stop: chain.ends[end], side: end === 'start' ? 'above' : 'below' };
  draft.report('switchInOpening', [id, chain.openingAt(0)!.gateway.id], chain.geometry.path[0]!);
  return null;
}

function along(draft: NetworkDraft, id: string, chain: LineChain, atM: number): Spot | null {
  const { geometry } = chain;
  const reachM = Math.max(draft.toleranceM, leastLengthM);
  if (!(atM >= -reachM && atM <= geometry.lengthM + reachM)) {
    const nearest = lonLatAt(geometry, atM > geometry.lengthM ? geometry.lengthM : 0);
    draft.report('switchNowhere', [id, chain.line.id], nearest);
    return null;
  }
  const post = chain.postAt(atM);
  if (post) return besidePost(draft, id, chain, post.gatewayId, post.post);
  const opening = chain.openingAt(atM);
  if (opening) {
    draft.report('switchInOpening', [id, opening.gateway.id], lonLatAt(geometry, atM));
    return null;
  }
  if (atM <= leastLengthM) return atLineEnd(draft, id, chain, 'start');
  if (atM >= geometry.lengthM - leastLengthM) return atLineEnd(draft, id, chain, 'end');
  return { chain, stop: chain.stopAt(atM, `switch:${id}:joint`), side: 'above' };
}
