import { type RefObject, useLayoutEffect, useState } from 'react';

/** Width of an element as it stands on the screen, so that a drawing in it keeps its type size. */
export function useWidthPx(element: RefObject<HTMLElement | null>, atFirst: number): number {
  const [widthPx, setWidthPx] = useState(atFirst);
  useLayoutEffect(() => {
    if (!element.current) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) setWidthPx(entry.contentRect.width);
    });
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [element]);
  return widthPx;
}
