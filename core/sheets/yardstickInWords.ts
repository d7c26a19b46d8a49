import type { Project } from '../model/project.ts';
import type { Limits, Yardstick } from '../model/yardstick.ts';
import { goodShare, lowShare } from '../survey/power/yardstick.ts';
import { dateText } from '../words/dates.ts';
import { formatVoltage } from '../words/numbers/write.ts';
import { inOrder } from '../words/text.ts';

/**
 * What a reading is judged by: "Usual here: 8.1 kV, estimated with S4 off; under 4.9 kV is low, from 6.1 kV good."
 * `switches`: how they stand, see `switchesOff`.
 */
export function yardstickSentence(yardstick: Yardstick, switches: string, where = 'here'): string {
  return `${usualInWords(yardstick, switches, where)}; ${limitsInWords(yardstick)}.`;
}

function usualInWords(yardstick: Yardstick, switches: string, where: string): string {
  if (yardstick.by === 'own') return 'Judged by the limits of this search';
  const usual = usualFigure(yardstick);
  if (usual === null) return `What is usual ${where} is not known, so only what holds the stock counts`;
  return `Usual ${where}: ${usual} ${switches}`;
}

/** "8.1 kV, estimated", "7.9 kV, read on 3 March 2026"; null where it is not known. */
export function usualFigure({ usualV, by, readOn }: Yardstick): string | null {
  if (usualV === null) return null;
  return `${formatVoltage(usualV)}, ${by === 'reading' ? `read on ${dateText(readOn ?? '')}` : 'estimated'}`;
}

function limitsInWords({ lowBelowV, goodFromV }: Limits): string {
  return `under ${formatVoltage(lowBelowV)} is low, from ${formatVoltage(goodFromV)} good`;
}

const mostNamed = 5;

/** "with S4, S7 off", "with 12 switches off", "with the switches as they normally stand". */
export function switchesOff(project: Project, openIds: Iterable<string>): string {
  const names = inOrder([...openIds].map((id) => project.switch.get(id)?.name ?? 'a switch that is gone'));
  if (names.length === 0) return 'with the switches as they normally stand';
  return names.length > mostNamed ? `with ${names.length} switches off` : `with ${names.join(', ')} off`;
}

/** How the limits come about, for a foot of a page. */
export const limitsExplained = `What is usual is an earlier good reading at the same place with the same switches off; without one it is the estimate, and an estimate may be off. From ${asPercent(goodShare)} of it on a reading is good, under ${asPercent(lowShare)} it is low, never less than what holds the stock: an assumption (common practice, no source).`;

/** The same in one line, for a sheet that has to stay one page. */
export const limitsInOneLine = `Usual: read there before with the same switches off, else estimated, and an estimate may be off. Limits (${asPercent(lowShare)}, ${asPercent(goodShare)}): an assumption.`;

function asPercent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
