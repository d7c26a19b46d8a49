import { switchEffects } from '../../electrical/effects/switchEffects.ts';
import { allAtOnce, type Steps } from '../../model/steps.ts';
import { byName } from '../../words/text.ts';
import type { SwitchFeed } from '../types.ts';
import { fencePlace } from './fencePlace.ts';
import type { FencePlace, Power } from './types.ts';

/** What throwing one switch does, the others standing as they normally do. */
export interface SwitchThrow {
  readonly switchId: string;
  readonly name: string;
  readonly action: 'open' | 'close';
  /** Fence that goes dead (opened) or comes alive (closed). */
  readonly lengthM: number;
  /** From both sides, and nothing goes dead or comes alive: a ring brings current from the other side. */
  readonly fed: SwitchFeed['from'];
  /** Of what is live then; null where nothing is. */
  readonly weakest: FencePlace | null;
  /** At the energiser. */
  readonly sourceV: number;
}

/** Every switch of the network, by name. */
export function switchTable(power: Power): SwitchThrow[] {
  return allAtOnce(switchTableSteps(power));
}

export function* switchTableSteps({ project, survey, supplies }: Power): Steps<SwitchThrow[]> {
  const rows = new Map<string, SwitchThrow>();
  const fed = new Map(survey.switches.map((row) => [row.switch.id, row.feed.from]));
  for (const supply of supplies) {
    const idOfLink = new Map([...supply.linkOfSwitch].map(([id, link]) => [link, id]));
    for (const effect of switchEffects(supply.prepared, [...idOfLink.keys()])) {
      const switchId = idOfLink.get(effect.link)!;
      const { action, lengthM, runsReached, weakest, sourceVoltageV } = effect;
      rows.set(switchId, {
        switchId,
        name: project.switch.get(switchId)?.name ?? switchId,
        action,
        lengthM,
        fed: fed.get(switchId) ?? 'notInFence',
        weakest:
          // A live lead-out alone is no fence.
          weakest && runsReached > 0 ? fencePlace(project, survey, supply, weakest.place, weakest.volts) : null,
        sourceV: sourceVoltageV,
      });
      yield;
    }
  }
  return [...rows.values()].sort(byName);
}
