import { message } from '../words/message.ts';
import { alongLineM, lineEnd, note, ownName, status } from './common.ts';
import { kind, type ValueOf } from './describe.ts';
import { choice, flag, orNone, reference, tagged } from './fields.ts';
import { relativeCost } from './property.ts';

/** Where a cut-out switch is. */
const switchPlace = tagged(
  'on',
  {
    /** In the run that ends at this post of the gateway, outside the opening. */
    gateway: { gatewayId: reference('gateway'), post: lineEnd },
    /** At the end of a line, where it takes off from another. */
    lineEnd: { lineId: reference('fenceLine'), end: lineEnd },
    /** Along a line. */
    line: { lineId: reference('fenceLine'), atM: alongLineM },
    /** Where the lead-out joins the fence. */
    leadOut: { leadOutId: reference('leadOut') },
  },
  { mustBe: message('kinds.mustBe.switchPlace'), ownEdit: true },
);
export type SwitchPlace = ValueOf<typeof switchPlace>;

export const cutOutSwitch = kind('switch', {
  prefix: 'S',
  uniqueName: true,
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'network', 'counted'],
  fields: {
    name: ownName,
    place: switchPlace,
    normally: choice(['closed', 'open'], { column: true, default: 'closed' }),
    /** Kept where it is when the plan is redone. */
    pinned: flag({ default: false }),
    status,
    note,
  },
});

/** The user's word on one place where a switch could go; its id is the place's key as text, see `placeKey.ts`. */
export const switchRule = kind('switchRule', {
  lists: ['drawing', 'keptPlan', 'handover', 'exchange'],
  fields: {
    rule: choice(['forced', 'forbidden']),
  },
});

/** A place that the user adds to those where a switch could go. */
export const switchCandidate = kind('switchCandidate', {
  lists: ['drawing', 'keptPlan', 'handover', 'exchange'],
  fields: {
    lineId: reference('fenceLine', { ownEdit: true }),
    atM: alongLineM,
    /** Cost relative to a switch at a gateway; `null` takes the cost along a run. */
    cost: orNone(relativeCost),
  },
});
