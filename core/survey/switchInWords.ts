import type { Project } from '../model/project.ts';
import { type Message, message } from '../words/message.ts';
import type { SwitchFeed, SwitchRow } from './types.ts';

/** Which way a switch is fed: "from A to B", "from the energiser to A", "both sides: A | E", "not fed: C | D". */
export function feedInWords(feed: SwitchFeed): Message {
  switch (feed.from) {
    case 'oneSide':
      return message('survey.switches.fed.oneSide', { supply: feed.supply, far: feed.far });
    case 'bothSides':
      return message('survey.switches.fed.bothSides', { sides: feed.sides });
    case 'nowhere':
      return message('survey.switches.fed.nowhere', { sides: feed.sides });
    case 'notInFence':
      return message('survey.switches.fed.notInFence');
  }
}

/** The same as a sentence: "Fed from both sides: section A and section E. Turning it off alone makes no wire dead." */
export function feedSentence(feed: SwitchFeed): Message {
  switch (feed.from) {
    case 'oneSide':
      return message('survey.switches.feed.oneSide', { supply: feed.supply, far: feed.far });
    case 'bothSides':
      return message('survey.switches.feed.bothSides', { sides: feed.sides, off: feed.off });
    case 'nowhere':
      return message('survey.switches.feed.nowhere');
    case 'notInFence':
      return message('survey.switches.feed.notInFence');
  }
}

/** What it cuts off alone, the other switches as they normally stand: "Turned off alone it cuts off 840 m of fence, section C, with G4." */
export function cutsOffSentence({ feed, cutsOff }: SwitchRow, project: Project): Message | null {
  if (feed.from !== 'oneSide') return null;
  const { lengthM, sections, gatewayIds } = cutsOff;
  const gateways = gatewayIds.map((id) => project.gateway.get(id)?.name ?? id);
  return message('survey.switches.cutsOff', { off: feed.off, lengthM, sections, gateways });
}
