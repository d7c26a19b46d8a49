import { formatTape, type Units } from '../words/numbers/write.ts';
import type { CrossingDepth, DepthThere } from './depth.ts';

/**
 * "0.10 to 0.42 m deep to the top of the pipe, measured"; "0.42 m deep ..., measured at one place"; "trench 0.45 m deep as
 * planned, not measured".
 */
export function depthInWords(depth: CrossingDepth, units: Units): string {
  return depth.measured
    ? `${rangeInWords(depth.leastM, depth.mostM, units)} deep to the top of the pipe, ${measuredInWords(depth)}`
    : `trench ${formatTape(depth.leastM, units)} deep as planned, not measured`;
}

/** One place says little of the rest of the trench. */
export function measuredInWords({ places }: Pick<CrossingDepth, 'places'>): string {
  return places === 1 ? 'measured at one place' : 'measured';
}

/** The same on two short lines, for a label on a map. */
export function depthLabel(
  depth: CrossingDepth & { readonly inGround: boolean },
  units: Units,
): readonly [string, string] {
  if (!depth.inGround) return [`trench ${formatTape(depth.leastM, units)} planned`, 'not in the ground'];
  return depth.measured
    ? [`${rangeInWords(depth.leastM, depth.mostM, units)} to the pipe`, measuredInWords(depth)]
    : [`trench ${formatTape(depth.leastM, units)} planned`, 'not measured'];
}

/** "0.31 m to the top of the pipe, measured"; "about 0.31 m ..., by the depths next to it"; "trench 0.45 m deep as planned, not measured". */
export function depthThereInWords({ depthM, basis }: DepthThere, units: Units): string {
  const words = formatTape(depthM, units);
  if (basis === 'planned') return `trench ${words} deep as planned, not measured`;
  return basis === 'measured'
    ? `${words} to the top of the pipe, measured`
    : `about ${words} to the top of the pipe, by the depths measured next to it`;
}

/** The same on short lines, for a picture; nothing where it is the same everywhere, as planned. */
export function depthThereLabel({ depthM, basis }: DepthThere, units: Units): readonly string[] {
  const words = formatTape(depthM, units);
  if (basis === 'planned') return [];
  return [`${basis === 'nearby' ? 'about ' : ''}${words} to pipe`];
}

/** "0.31 m", "about 0.31 m", "0.45 m planned": where a heading says the rest (`depthHeading`). */
export function depthThereInShort({ depthM, basis }: DepthThere, units: Units): string {
  const words = formatTape(depthM, units);
  return { measured: words, nearby: `about ${words}`, planned: `${words} planned` }[basis];
}

/** What depths in a table or a picture are of. */
export function depthHeading({ measured }: Pick<CrossingDepth, 'measured'>): string {
  return measured ? 'Depth to the top of the pipe' : 'Depth of the trench as planned';
}

/** Of depths that count for nothing: "Left out: 0.05 m at 9.00 m, beyond the end of the trench (5.14 m)."; empty where none is. */
export function leftOutInWords({ leftOut }: CrossingDepth, lengthM: number, units: Units): string {
  if (leftOut.length === 0) return '';
  const some = leftOut
    .slice(0, 3)
    .map(({ alongM, depthM }) => `${formatTape(depthM, units)} at ${formatTape(alongM, units)}`);
  const more = leftOut.length > 3 ? ` and ${leftOut.length - 3} more` : '';
  return `Left out: a depth of ${some.join(', ')}${more}, beyond the end of the trench (${formatTape(lengthM, units)} long).`;
}

/** "0.10 to 0.42 m"; "0.42 m" where both read the same. */
export function rangeInWords(leastM: number, mostM: number, units: Units): string {
  const [least, most] = [formatTape(leastM, units), formatTape(mostM, units)];
  return least === most ? most : `${least.replace(/ \S+$/, '')} to ${most}`;
}
