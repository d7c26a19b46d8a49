import type { CSSProperties } from 'react';
import { sectionColour } from '../../../core/drawing/palette.ts';

/** A section's letter over its colour, as it stands on the map. */
export function SectionBadge({ index, letter }: { readonly index: number; readonly letter: string }) {
  return (
    <span className="section-badge" style={{ '--section': sectionColour(index) } as CSSProperties}>
      {letter}
    </span>
  );
}
