import type { PreparedVoltage } from '../preparedVoltage.ts';
import { ThrowSearch } from './throwSearch.ts';
import type { PlaceVoltage } from './weakestPlace.ts';

export interface SwitchEffect {
  readonly link: number;
  /** What is done to it: a closed one is opened, an open one closed. */
  readonly action: 'open' | 'close';
  /** Nodes and metres of run that lose their way to the energiser, or (closing) gain one. */
  readonly nodes: number;
  readonly lengthM: number;
  /** Runs that have a way to it then. */
  readonly runsReached: number;
  /** Of what is reached then. */
  readonly weakest: PlaceVoltage | null;
  readonly sourceVoltageV: number;
  readonly sourceCurrentA: number;
}

/**
 * What throwing each switch alone does, in the order asked (all links by default). One that can't be worked out is left
 * out. Each costs as much as its way to the energiser is long, whatever the size of the network.
 */
export function* switchEffects(
  prepared: PreparedVoltage,
  links: readonly number[] = prepared.circuit.links.map((_, i) => i),
): Generator<SwitchEffect> {
  if (links.length === 0 || !prepared.asIs.ok) return;
  const search = new ThrowSearch(prepared);
  for (const link of links) {
    const thrown = search.throwLink(link);
    if (!thrown) continue;
    const { reach, weakest, sourceVoltageV, sourceCurrentA } = thrown;
    const { nodes, lengthM, runsReached, gains } = reach;
    const action = gains ? 'close' : 'open';
    yield { link, action, nodes, lengthM, runsReached, weakest, sourceVoltageV, sourceCurrentA };
  }
}
