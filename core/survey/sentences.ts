import { fixed, formatArea, formatLength, type Units } from '../words/numbers/write.ts';
import { counted } from '../words/text.ts';
import type { DividePlan, PlanChange, Survey } from './types.ts';

/** Each workspace's answer in one sentence, with figures. */

export function coverSentence({ totals, sections }: Survey, units: Units): string {
  if (totals.fenceM === 0) return 'Nothing is drawn yet.';
  return `${list([
    `${formatLength(totals.fenceM, units)} of fence`,
    totals.paddocks > 0 ? `${counted(totals.paddocks, 'paddock')} of ${formatArea(totals.paddockAreaM2, units)}` : '',
    totals.gateways > 0 ? counted(totals.gateways, 'gateway') : '',
    sections.length > 0 ? counted(sections.length, 'section') : '',
  ])}.`;
}

export function drawSentence({ totals, reach, network }: Survey, units: Units): string {
  if (totals.fenceM === 0) return 'Draw the first fence line, or bring in a file of lines.';
  const drawn = list([
    `${formatLength(totals.fenceM, units)} of fence`,
    totals.gateways > 0 ? counted(totals.gateways, 'gateway') : '',
    totals.paddocks > 0 ? `${counted(totals.paddocks, 'paddock')} of ${formatArea(totals.paddockAreaM2, units)}` : '',
  ]);
  const deadM = reach.deadParts.reduce((sum, { lengthM }) => sum + lengthM, 0);
  if (totals.liveFenceM === 0) return `${drawn}; none of it is live.`;
  if (network.sources.length === 0) return `${drawn}; no energiser is drawn yet.`;
  if (totals.fedFenceM === 0) return `${drawn}; the energiser reaches none of it.`;
  if (deadM === 0) return `${drawn}; the energiser reaches all that is live.`;
  return `${drawn}; the energiser does not reach ${formatLength(deadM, units)} in ${counted(reach.deadParts.length, 'part')}.`;
}

/** `plan` is null while it is being worked out, and where there is nothing to plan. */
export function divideSentence(survey: Survey, plan: DividePlan | null, units: Units): string {
  const { sections, network } = survey;
  if (sections.length === 0) return 'No live fence is drawn, so there is nothing to divide.';
  const longest = sections.reduce((a, b) => (b.lengthM > a.lengthM ? b : a));
  const over = sections.filter(({ overByM, overByGateways }) => overByM !== null || overByGateways !== null).length;
  const drawn = list([
    counted(sections.length, 'section'),
    `longest ${formatLength(longest.lengthM, units)}`,
    over > 0 ? `${over} over the limit` : '',
  ]);
  if (network.sources.every(({ node }) => node === null)) return `${drawn}; no energiser feeds them yet.`;
  const changes = plan
    ? list([
        plan.missing.length > 0 ? `${counted(plan.missing.length, 'switch', 'switches')} missing` : '',
        plan.surplus.length > 0 ? `${plan.surplus.length} not needed` : '',
        plan.overLimit.length > 0
          ? `${counted(plan.overLimit.length, 'stretch', 'stretches')} that no switch brings within the limits`
          : '',
      ])
    : '';
  return changes === '' ? `${drawn}.` : `${drawn}; ${changes}.`;
}

/** What the plan comes to beside the switches that are drawn, where it asks for no change. */
export function settledInWords({ optimal, overLimit }: DividePlan): string {
  const asDrawn = 'The switches as drawn are the plan';
  if (overLimit.length > 0) return `${asDrawn}. It can't keep every section within the limits.`;
  return optimal
    ? `${asDrawn}: no cheaper set keeps every section within the limits.`
    : `${asDrawn}: no cheaper set that keeps every section within the limits was found.`;
}

/** Whether the plan is proven, and if not, how far off it can be. `stopped`: the user stopped the search. */
export function proofInWords({ optimal, overLimit, complete, cost, costBound }: DividePlan, stopped: boolean): string {
  if (optimal) {
    const proven =
      overLimit.length === 0
        ? 'Proven: no set of switches costs less within these limits.'
        : 'No set of switches keeps everything within these limits. Proven for the rest: none costs less.';
    if (complete) return proven;
    return `${proven} ${stopped ? 'Stopped while looking' : 'Looking'} for one as cheap whose longest section is shorter.`;
  }
  const [known, off] = [fixed(costBound, 1), fixed(cost - costBound, 1)];
  const share = fixed((100 * (cost - costBound)) / cost, 0);
  const bound = `No set can cost less than ${known}: this one is at most ${off} (${share} % of its cost) above.`;
  const within = overLimit.length === 0 ? '' : ' No set of switches keeps everything within these limits.';
  if (complete) return `Not proven cheapest. ${bound}${within}`;
  return `${stopped ? 'Stopped before the proof; a cheaper set may be found.' : 'Looking for a cheaper set.'} ${bound}${within}`;
}

/** What a change to the plan costs: "Without a switch at G4: longest section 7.20 km, over by 2.20 km." */
export function changeInWords(change: PlanChange, units: Units): string {
  if (change.kind === 'keep') {
    const cost = fixed(change.cost, 1);
    return `Keeping ${change.label}: the plan does without it; it counts as much as ${cost} switches at a gateway.`;
  }
  const over = change.overByM > 0 ? `over by ${formatLength(change.overByM, units)}` : 'within the limit';
  const gateways = change.overByGateways > 0 ? `, ${counted(change.overByGateways, 'gateway')} too many` : '';
  return `Without a switch at ${change.label}: a section of ${formatLength(change.lengthM, units)}, ${over}${gateways}.`;
}

function list(parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(', ');
}
