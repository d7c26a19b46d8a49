import type { Xy } from '../geometry/types.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import type { CutOutSwitch, Energiser, LeadOut } from '../model/things.ts';
import { leastLengthM } from '../shapes/measuredPath.ts';
import { isPlaceOnEarth } from '../shapes/workingPlane.ts';
import type { NetworkDraft } from './networkDraft.ts';
import { addSwitch } from './placeSwitches.ts';

/** The joint of an energiser; null where neither it nor any of its lead-outs touches a live line. */
export interface EnergiserJoint {
  readonly energiserId: string;
  readonly joint: number | null;
}

/** Connects each energiser by its lead-outs; one without a lead-out by where it stands. */
export function connectEnergisers(
  draft: NetworkDraft,
  switchesAt: ReadonlyMap<string, readonly CutOutSwitch[]>,
): EnergiserJoint[] {
  const { energiser: energisers, leadOut } = draft.project;
  const leadOuts = Map.groupBy(leadOut.values(), ({ energiserId }) => energiserId);
  for (const [energiserId, stray] of leadOuts) {
    if (energisers.has(energiserId)) continue;
    for (const { id, path } of stray) draft.report('leadOutWithoutEnergiser', [id], path[0] ?? null);
  }
  return [...energisers.values()].map((energiser) => {
    const { id: energiserId, at } = energiser;
    if (!isPlaceOnEarth(at)) {
      draft.report('energiserNotOnEarth', [energiserId], null);
      return { energiserId, joint: null };
    }
    const own = leadOuts.get(energiserId);
    const joint = own ? connectByLeadOuts(draft, energiser, own, switchesAt) : connectWhereItStands(draft, energiser);
    if (joint === null) draft.report('energiserTouchesNothing', [energiserId], at);
    return { energiserId, joint };
  });
}

function connectWhereItStands(draft: NetworkDraft, { id, at }: Energiser): number | null {
  const xy = draft.plane.toXy(at);
  const touched = draft.jointsAt(xy, `energiser:${id}`, ({ gateway }) => {
    draft.report('touchInOpening', [gateway.id, id], at);
  });
  if (touched.length === 0) return null;
  const joint = draft.joints.add('energiser', `energiser:${id}`, xy, () => at);
  for (const other of touched) draft.joints.join(joint, other);
  return joint;
}

function connectByLeadOuts(
  draft: NetworkDraft,
  { id, at }: Energiser,
  leadOuts: readonly LeadOut[],
  switchesAt: ReadonlyMap<string, readonly CutOutSwitch[]>,
): number | null {
  const xy = draft.plane.toXy(at);
  let joint: number | null = null;
  for (const leadOut of leadOuts) {
    const end = leadOutEnd(draft, leadOut, xy);
    if (end === null) continue;
    joint ??= draft.joints.add('energiser', `energiser:${id}`, xy, () => at);
    layLeadOut(draft, leadOut, joint, end, switchesAt.get(leadOut.id) ?? []);
  }
  return joint;
}

/** The joint where a lead-out meets the fence, or null. */
function leadOutEnd(draft: NetworkDraft, { id, path, energiserId }: LeadOut, energiserXy: Xy): number | null {
  const end = path.at(-1);
  if (!end || !path.every(isPlaceOnEarth)) {
    draft.report('leadOutNotOnEarth', [id], null);
    return null;
  }
  const startsAwayM = xyDistanceM(draft.plane.toXy(path[0]!), energiserXy);
  if (startsAwayM > draft.toleranceM + leastLengthM) {
    draft.report('leadOutStartsElsewhere', [id, energiserId], path[0]!, startsAwayM);
  }
  const xy = draft.plane.toXy(end);
  const touched = draft.jointsAt(xy, `leadOut:${id}`, ({ gateway }) => {
    draft.report('touchInOpening', [gateway.id, id], end);
  });
  if (touched.length === 0) {
    draft.report('leadOutTouchesNothing', [id, energiserId], end);
    return null;
  }
  const joint = draft.joints.add('leadOut', `leadOut:${id}`, xy, () => end);
  for (const other of touched) draft.joints.join(joint, other);
  return joint;
}

/** The cable from the energiser, then the switches, then the fence. */
function layLeadOut(
  draft: NetworkDraft,
  { id, path }: LeadOut,
  energiser: number,
  end: number,
  switches: readonly CutOutSwitch[],
): void {
  const at = path.at(-1)!;
  let cable = end;
  for (const cutOut of switches) {
    const inner = cable;
    cable = draft.joints.add('switch', `switch:${cutOut.id}`, draft.joints.xyOf(end), () => at);
    draft.joints.addRole(inner, 'switch');
    addSwitch(draft, cutOut, cable, inner);
  }
  const cableLengthM = draft.plane.earth.pathLengthM(path);
  draft.edges.push({ kind: 'leadOut', key: `leadOut:${id}`, from: energiser, to: cable, leadOutId: id, cableLengthM });
}
