import type { Basis } from '../../../core/electrical/basis.ts';

/** Where a figure is from: "IEC 60888, zinc-coated steel at 9 % IACS (standard, from memory)". */
export function basisInWords({ mark, source, fromMemory }: Basis): string {
  if (source === null) return mark;
  if (mark === 'assumption') return source.startsWith('common practice') ? source : `assumption: ${source}`;
  return `${source} (${mark}${fromMemory ? ', from memory' : ''})`;
}
