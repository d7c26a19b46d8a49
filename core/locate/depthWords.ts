import { type Message, message } from '../words/message.ts';
import type { CrossingDepth, DepthThere } from './depth.ts';

/**
 * "0.10 to 0.42 m deep to the top of the pipe, measured"; "0.42 m deep ..., measured at one place"; "trench 0.45 m deep as
 * planned, not measured".
 */
export function depthInWords({ measured, leastM, mostM, places }: CrossingDepth): Message {
  return measured
    ? message('locate.depth.measured', { leastM, mostM, places })
    : message('locate.depth.planned', { depthM: leastM });
}

/** The same on two short lines, for a label on a map. */
export function depthLabel(depth: CrossingDepth & { readonly inGround: boolean }): readonly [Message, Message] {
  const { inGround, measured, leastM, mostM, places } = depth;
  const planned = message('locate.depth.label.planned', { depthM: leastM });
  if (!inGround) return [planned, message('locate.depth.label.notInTheGround')];
  return measured
    ? [message('locate.depth.label.toThePipe', { leastM, mostM }), message('locate.depth.measuredAt', { places })]
    : [planned, message('locate.depth.label.notMeasured')];
}

/** "0.31 m to the top of the pipe, measured"; "about 0.31 m ..., by the depths next to it"; "trench 0.45 m deep as planned, not measured". */
export function depthThereInWords({ depthM, basis }: DepthThere): Message {
  return basis === 'planned'
    ? message('locate.depth.planned', { depthM })
    : message(`locate.depth.there.${basis}`, { depthM });
}

/** The same on a short line, for a picture; null where it is the same everywhere, as planned. */
export function depthThereLabel({ depthM, basis }: DepthThere): Message | null {
  if (basis === 'planned') return null;
  return basis === 'nearby'
    ? message('locate.depth.label.nearby', { depthM })
    : message('locate.depth.label.there', { depthM });
}

/** "0.31 m", "about 0.31 m", "0.45 m planned": where a heading says the rest (`depthHeading`). */
export function depthThereInShort({ depthM, basis }: DepthThere): Message {
  return message(`locate.depth.short.${basis}`, { depthM });
}

/** What depths in a table or a picture are of. */
export function depthHeading({ measured }: Pick<CrossingDepth, 'measured'>): Message {
  return message(measured ? 'locate.depth.heading.measured' : 'locate.depth.heading.planned');
}

const mostLeftOut = 3;

/** Of depths that count for nothing: "Left out: 0.05 m at 9.00 m, beyond the end of the trench (5.14 m)."; null where none is. */
export function leftOutInWords({ leftOut }: CrossingDepth, lengthM: number): Message | null {
  if (leftOut.length === 0) return null;
  const some = leftOut.slice(0, mostLeftOut).map(({ alongM, depthM }) => ({ alongM, depthM }));
  return message('locate.depth.leftOut', { some, more: leftOut.length - some.length, lengthM });
}
