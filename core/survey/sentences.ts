import { type Message, message } from '../words/message.ts';
import type { DividePlan, PlanChange, Survey } from './types.ts';

/** Each workspace's answer in one sentence, with figures. */

export function coverSentence({ totals, sections }: Survey): Message {
  if (totals.fenceM === 0) return message('survey.answers.cover.nothing');
  return message('survey.answers.cover.drawn', { ...drawnOf(totals), sections: sections.length });
}

export function drawSentence({ totals, reach, network }: Survey): Message {
  if (totals.fenceM === 0) return message('survey.answers.draw.nothing');
  const drawn = drawnOf(totals);
  const deadM = reach.deadParts.reduce((sum, { lengthM }) => sum + lengthM, 0);
  if (totals.liveFenceM === 0) return message('survey.answers.draw.notLive', drawn);
  if (network.sources.length === 0) return message('survey.answers.draw.noEnergiser', drawn);
  if (totals.fedFenceM === 0) return message('survey.answers.draw.reachesNone', drawn);
  if (deadM === 0) return message('survey.answers.draw.reachesAll', drawn);
  return message('survey.answers.draw.reachesSome', { ...drawn, deadM, parts: reach.deadParts.length });
}

function drawnOf({ fenceM, paddocks, paddockAreaM2, gateways }: Survey['totals']) {
  return { fenceM, paddocks, paddockAreaM2, gateways };
}

/** `plan` is null while it is being worked out, and where there is nothing to plan. */
export function divideSentence(survey: Survey, plan: DividePlan | null): Message {
  const { sections, network } = survey;
  if (sections.length === 0) return message('survey.answers.divide.nothing');
  const longest = sections.reduce((a, b) => (b.lengthM > a.lengthM ? b : a));
  const over = sections.filter(({ overByM, overByGateways }) => overByM !== null || overByGateways !== null).length;
  const divided = { sections: sections.length, longestM: longest.lengthM, over };
  if (network.sources.every(({ node }) => node === null)) return message('survey.answers.divide.noEnergiser', divided);
  const [missing, surplus, overLimit] = [plan?.missing ?? [], plan?.surplus ?? [], plan?.overLimit ?? []];
  if (missing.length + surplus.length + overLimit.length === 0) return message('survey.answers.divide.drawn', divided);
  const planned = { missing: missing.length, surplus: surplus.length, overLimit: overLimit.length };
  return message('survey.answers.divide.planned', { ...divided, ...planned });
}

/** What the plan comes to beside the switches that are drawn, where it asks for no change. */
export function settledInWords({ optimal, overLimit }: DividePlan): Message {
  if (overLimit.length > 0) return message('survey.plan.settled.overLimit');
  return optimal ? message('survey.plan.settled.proven') : message('survey.plan.settled.notProven');
}

/** Whether the plan is proven, and if not, how far off it can be. `stopped`: the user stopped the search. */
export function proofInWords({ optimal, overLimit, complete, cost, costBound }: DividePlan, stopped: boolean): Message {
  const keepsLimits = overLimit.length === 0;
  if (optimal) {
    return complete
      ? message('survey.plan.proof.proven', { keepsLimits })
      : message('survey.plan.proof.lookingForShorter', { keepsLimits, stopped });
  }
  const bound = { cost, costBound, keepsLimits };
  if (complete) return message('survey.plan.proof.notProven', bound);
  return stopped ? message('survey.plan.proof.stopped', bound) : message('survey.plan.proof.looking', bound);
}

/** What a change to the plan costs: "Without a switch at G4: a section of 7.20 km, over by 2.20 km." */
export function changeInWords(change: PlanChange): Message {
  const { kind } = change;
  if (kind === 'keep') return message('survey.plan.change.keep', { name: change.name, cost: change.cost });
  const { label: place, lengthM, overByM, overByGateways } = change;
  return message('survey.plan.change.leaveOut', { place, lengthM, overByM, overByGateways });
}
