import type { ReactNode } from 'react';

/** A text of the catalogue in which *this* stands out and [this] is a key. */
export function Marked({ text }: { readonly text: string }): ReactNode {
  return text.split(/(\*[^*]+\*|\[[^\]]+\])/).map((part, index) => {
    const inside = part.slice(1, -1);
    // biome-ignore lint/suspicious/noArrayIndexKey: a piece of a text has no identity but its place
    if (part.startsWith('*')) return <strong key={index}>{inside}</strong>;
    // biome-ignore lint/suspicious/noArrayIndexKey: a piece of a text has no identity but its place
    return part.startsWith('[') ? <kbd key={index}>{inside}</kbd> : part;
  });
}
