import type { Item, PaperBox, PaperPoint } from '../displayList.ts';
import type { MapWindow } from '../mapWindow.ts';
import { circle, line, stroke } from '../paint.ts';
import { ink, pen } from '../style.ts';

const ringsMm = [3, 4.5, 6, 8, 10, 13];
const turns = Array.from({ length: 12 }, (_, i) => (i * Math.PI) / 6);

/** The place itself, or the nearest about it where a sign covers no other; the place itself where there is none. */
export function firstFree(
  place: PaperPoint,
  covers: (spot: PaperPoint) => PaperBox,
  taken: readonly PaperBox[],
  window: MapWindow,
): PaperPoint {
  const around = ringsMm.flatMap((ring) =>
    turns.map((turn): PaperPoint => [place[0] + ring * Math.cos(turn), place[1] + ring * Math.sin(turn)]),
  );
  const free = (spot: PaperPoint) => window.shows(spot, 2) && !taken.some((other) => meet(covers(spot), other));
  return [place, ...around].find(free) ?? place;
}

/** A hairline from the true place to a sign that had to stand off. */
export function leaderTo(place: PaperPoint, spot: PaperPoint): Item[] {
  if (Math.hypot(spot[0] - place[0], spot[1] - place[1]) < 0.5) return [];
  return [line([place, spot], stroke(pen.hairline)), circle(place, 0.3, ink.black)];
}

function meet(a: PaperBox, b: PaperBox): boolean {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}
