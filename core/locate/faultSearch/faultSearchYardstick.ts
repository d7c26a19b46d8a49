import type { FaultSearch } from '../../model/faultSearchThings.ts';
import type { Yardstick } from '../../model/yardstick.ts';
import type { Power } from '../../survey/power/types.ts';
import { nodeAtSwitch, standingOf, stockYardstick, yardstickAt } from '../../survey/power/yardstick.ts';
import type { FaultSearchStep } from './faultSearchWalk.ts';

/** All switches that stand open for a step: those that normally do, those opened for the rings, and its own. */
export function openForStep(
  power: Power,
  { openedFirst }: Pick<FaultSearch, 'openedFirst'>,
  { openIds }: Pick<FaultSearchStep, 'openIds'>,
): Set<string> {
  return new Set([...power.normallyOpen, ...openedFirst, ...openIds]);
}

/** What the reading of a step is judged by: what is usual there with the switches so, or the search's own limits. */
export function faultSearchYardstick(
  power: Power,
  search: Pick<FaultSearch, 'energiserId' | 'openedFirst' | 'judgedBy' | 'lowBelowV' | 'goodFromV'>,
  step: Pick<FaultSearchStep, 'switchId' | 'openIds'>,
): Yardstick {
  if (search.judgedBy !== 'usual') {
    return { usualV: null, by: 'own', lowBelowV: search.lowBelowV, goodFromV: search.goodFromV };
  }
  const standing = standingOf(power, openForStep(power, search, step));
  const node =
    step.switchId === null ? sourceOf(power, search.energiserId) : nodeAtSwitch(power, step.switchId, standing);
  return node === null ? stockYardstick(power.project) : yardstickAt(power, { node, standing });
}

function sourceOf({ survey }: Power, energiserId: string): number | null {
  return survey.network.sources.find((source) => source.energiserId === energiserId)?.node ?? null;
}
