import { largestOf, leastOf } from '../../model/extremes.ts';
import type { PaperBox, PaperPoint } from '../displayList.ts';

/** Strokes at 45 degrees, `spacingMm` apart, inside a ring (even-odd where it crosses itself), of those that can meet `frame`. */
export function hatchPolygon(ring: readonly PaperPoint[], spacingMm: number, frame: PaperBox): PaperPoint[][] {
  // Across the strokes: c = (x + y) / sqrt 2 is the same all along one stroke; d = (x - y) / sqrt 2 runs along it.
  const turned = ring.map(([x, y]): PaperPoint => [(x + y) / Math.SQRT2, (x - y) / Math.SQRT2]);
  const across = turned.map(([c]) => c);
  const least = Math.max(leastOf(across), (frame[0] + frame[1]) / Math.SQRT2);
  const most = Math.min(largestOf(across), (frame[2] + frame[3]) / Math.SQRT2);
  const first = Math.ceil(least / spacingMm);
  const last = Math.floor(most / spacingMm);
  const strokes: PaperPoint[][] = [];
  for (let i = first; i <= last; i++) {
    const c = i * spacingMm;
    const meets = crossingsAt(turned, c);
    for (let k = 0; k + 1 < meets.length; k += 2) strokes.push([back(c, meets[k]!), back(c, meets[k + 1]!)]);
  }
  return strokes;
}

function crossingsAt(ring: readonly PaperPoint[], c: number): number[] {
  const meets: number[] = [];
  ring.forEach(([c0, d0], i) => {
    const [c1, d1] = ring[(i + 1) % ring.length]!;
    if (c0 > c !== c1 > c) meets.push(d0 + ((d1 - d0) * (c - c0)) / (c1 - c0));
  });
  return meets.sort((a, b) => a - b);
}

function back(c: number, d: number): PaperPoint {
  return [(c + d) / Math.SQRT2, (c - d) / Math.SQRT2];
}
