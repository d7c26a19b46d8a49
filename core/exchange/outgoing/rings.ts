import type { LonLat } from '../../model/things.ts';

/** A closed ring that runs anticlockwise (or clockwise, for a hole), as RFC 7946, 3.1.6 asks. */
export function wound(ring: readonly LonLat[], anticlockwise: boolean): readonly LonLat[] {
  return isAnticlockwise(ring) === anticlockwise ? ring : ring.toReversed();
}

export function isAnticlockwise(ring: readonly LonLat[]): boolean {
  let twice = 0;
  for (let i = 0; i + 1 < ring.length; i++) {
    const [a, b] = [ring[i]!, ring[i + 1]!];
    twice += (a[0] - ring[0]![0]) * (b[1] - ring[0]![1]) - (b[0] - ring[0]![0]) * (a[1] - ring[0]![1]);
  }
  return twice > 0;
}
