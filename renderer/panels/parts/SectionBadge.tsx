import type { CSSProperties } from 'react';
import { sectionStyle } from '../../map/staticLayer/sectionStyle.ts';

/** A section's letter over its colour, as it stands on the map. */
export function SectionBadge({ index, letter }: { readonly index: number; readonly letter: string }) {
  return (
    <span className="section-badge" style={{ '--section': sectionStyle(index).colour } as CSSProperties}>
      {letter}
    </span>
  );
}
