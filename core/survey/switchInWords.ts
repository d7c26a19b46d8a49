import type { Project } from '../model/project.ts';
import { formatLength, type Units } from '../words/numbers/write.ts';
import type { SwitchFeed, SwitchRow } from './types.ts';

/** Which way a switch is fed: "from A to B", "from the energiser to A", "both sides: A | E", "not fed: C | D". */
export function feedInWords(feed: SwitchFeed): string {
  switch (feed.from) {
    case 'oneSide':
      return `from ${feed.supply ?? 'the energiser'} to ${feed.far ?? 'nothing'}`;
    case 'bothSides':
      return `both sides: ${feed.sides.map((letter) => letter ?? 'the energiser').join(' | ')}`;
    case 'nowhere':
      return `not fed: ${feed.sides.map((letter) => letter ?? '-').join(' | ')}`;
    case 'notInFence':
      return 'in no live fence';
  }
}

/** The same as a sentence: "Fed from both sides: section A and section E. Opening it alone makes no wire dead." */
export function feedSentence(feed: SwitchFeed): string {
  switch (feed.from) {
    case 'oneSide':
      return `Fed from ${sideName(feed.supply)}; beyond it: ${feed.far === null ? 'nothing' : `section ${feed.far}`}.`;
    case 'bothSides':
      return `Fed from both sides: ${feed.sides.map(sideName).join(' and ')}. ${
        feed.off ? 'It is off, and there is current on both sides of it.' : 'Opening it alone makes no wire dead.'
      }`;
    case 'nowhere':
      return 'Not fed: no energiser reaches either side of it.';
    case 'notInFence':
      return 'It stands in no live fence, so it cuts nothing off.';
  }
}

function sideName(letter: string | null): string {
  return letter === null ? 'the energiser' : `section ${letter}`;
}

/** What it cuts off alone, the other switches as they normally stand: "Opened alone it cuts off 840 m of fence, section C, with G4." */
export function cutsOffSentence({ feed, cutsOff }: SwitchRow, project: Project, units: Units): string | null {
  if (feed.from !== 'oneSide') return null;
  const { lengthM, sections, gatewayIds } = cutsOff;
  const what = [
    `${formatLength(lengthM, units)} of fence`,
    sections.length > 0 ? `section${sections.length > 1 ? 's' : ''} ${sections.join(', ')}` : '',
    gatewayIds.length > 0 ? `with ${gatewayIds.map((id) => project.gateway.get(id)?.name ?? id).join(', ')}` : '',
  ].filter((part) => part !== '');
  return `${feed.off ? 'Off, it keeps dead' : 'Opened alone it cuts off'} ${what.join(', ')}.`;
}
