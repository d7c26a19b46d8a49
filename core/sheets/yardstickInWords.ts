import type { Project } from '../model/project.ts';
import type { Yardstick } from '../model/yardstick.ts';
import { goodShare, lowShare } from '../survey/power/yardstick.ts';
import type { ReadAt } from '../words/en/sheets/yardstick.ts';
import { type Message, message } from '../words/message.ts';
import { inOrder } from '../words/text.ts';

/**
 * What a reading is judged by: "Usual here: 8.1 kV, estimated with S4 off; under 4.9 kV is low, from 6.1 kV good."
 * `switches`: how they stand, see `switchesOff`.
 */
export function yardstickSentence(yardstick: Yardstick, switches: Message, where: ReadAt = 'here'): Message {
  const { lowBelowV, goodFromV } = yardstick;
  const limits = { lowBelowV, goodFromV };
  if (yardstick.by === 'own') return message('sheets.yardstick.own', limits);
  const usual = usualFigure(yardstick);
  if (usual === null) return message('sheets.yardstick.notKnown', { where, ...limits });
  return message('sheets.yardstick.usual', { where, usual, switches, ...limits });
}

/** "8.1 kV, estimated", "7.9 kV, read on 3 March 2026"; null where it is not known. */
export function usualFigure({ usualV, by, readOn }: Yardstick): Message | null {
  if (usualV === null) return null;
  return by === 'reading'
    ? message('sheets.yardstick.read', { usualV, on: readOn ?? '' })
    : message('sheets.yardstick.estimated', { usualV });
}

const mostNamed = 5;

/** "with S4, S7 off", "with 12 switches off", "with the switches as they normally stand". */
export function switchesOff(project: Project, openIds: Iterable<string>): Message {
  const ids = [...openIds];
  if (ids.length === 0) return message('sheets.yardstick.asNormal');
  if (ids.length > mostNamed) return message('sheets.yardstick.manyOff', { count: ids.length });
  const known = inOrder(ids.flatMap((id) => project.switch.get(id)?.name ?? []));
  const gone = ids.filter((id) => !project.switch.has(id)).map(() => null);
  return message('sheets.yardstick.off', { names: [...known, ...gone] });
}

/** How the limits come about, for a foot of a page. */
export function limitsExplained(): Message {
  return message('sheets.yardstick.explained', { goodShare, lowShare });
}

/** The same in one line, for a sheet that has to stay one page. */
export function limitsInOneLine(): Message {
  return message('sheets.yardstick.inOneLine', { goodShare, lowShare });
}
