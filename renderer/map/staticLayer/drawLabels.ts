import type { Item, PaperPoint } from '../../../core/drawing/displayList.ts';
import { quadBox } from '../../../core/drawing/labels/quads.ts';
import { type Shape, seatLabels } from '../../../core/drawing/labels/seats.ts';
import { face } from '../../../core/drawing/style.ts';
import type { Box } from '../../../core/geometry/box.ts';
import { type Px, toXy, type View } from '../plane/view.ts';
import type { Part } from '../scene/parts.ts';
import { labelRequests, letterSizePx, type MapLabel } from './labelRequests.ts';
import type { Look } from './look.ts';
import { labelSizePx } from './mapFont.ts';
import { signBoxes } from './signBoxes.ts';

const portion = 60;

/** Names, depths and letters, each where it covers neither another nor a sign. */
export function* drawLabels(look: Look, parts: readonly Part[]): Generator<readonly Item[]> {
  const { view } = look;
  const requests = (yield* labelRequests(look, parts)).filter(
    ({ anchor: [x, y] }) => x > -100 && y > -100 && x < view.widthPx + 100 && y < view.heightPx + 100,
  );
  yield [];
  if (requests.length === 0) return;
  const signs = signBoxes(look, parts, groundOf(requests, view));
  const seated = [...seatLabels<Px, MapLabel>(requests, { frame: null, signs, lines: [], shapeOf }).values()];
  yield [];
  for (let i = 0; i < seated.length; i += portion) {
    yield seated.slice(i, i + portion).flatMap(({ request, place }) => words(look, request, place));
  }
}

function shapeOf([dx, dy]: Px, { anchor: [x, y], width, height, turnDeg = 0 }: MapLabel): Shape {
  const [mx, my, w, h] = [x + dx, y + dy, width / 2, height / 2];
  if (turnDeg === 0) return { box: [mx - w, my - h, mx + w, my + h], quads: null };
  const angle = (turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const corner = (a: number, b: number): PaperPoint => [mx + a * w * cos - b * h * sin, my + a * w * sin + b * h * cos];
  const quad = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
  return { box: quadBox(quad), quads: [quad] };
}

/** Signs reach no further than this from the ground they stand on, pixels. */
const signReachPx = 40;

/** What of the plane the labels might cover, with room for signs. */
function groundOf(requests: readonly MapLabel[], view: View): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { anchor, width, height, places } of requests) {
    for (const step of places) {
      left = Math.min(left, anchor[0] + step[0] - width / 2);
      top = Math.min(top, anchor[1] + step[1] - height / 2);
      right = Math.max(right, anchor[0] + step[0] + width / 2);
      bottom = Math.max(bottom, anchor[1] + step[1] + height / 2);
    }
  }
  const [west, north] = toXy(view, [left - signReachPx, top - signReachPx]);
  const [east, south] = toXy(view, [right + signReachPx, bottom + signReachPx]);
  return [west, south, east, north];
}

/** The lines of a label as items, its middle at a step from its anchor. */
function words({ palette }: Look, label: MapLabel, [dx, dy]: Px): Item[] {
  const { text, style, anchor, turnDeg = 0 } = label;
  const isLetter = style === 'letter';
  const size = isLetter ? letterSizePx : labelSizePx;
  const angle = (turnDeg * Math.PI) / 180;
  const lines = text.split('\n');
  return lines.map((line, i): Item => {
    // From the label's middle down to this line's baseline.
    const down = (i - (lines.length - 1) / 2) * (labelSizePx + 3) + (face.capital * size) / 2;
    return {
      kind: 'text',
      text: line,
      at: [anchor[0] + dx - Math.sin(angle) * down, anchor[1] + dy + Math.cos(angle) * down],
      font: isLetter ? 'bold' : 'regular',
      size,
      align: 'centre',
      rotationDeg: turnDeg,
      ink: style === 'soft' ? palette.inkSoft : palette.ink,
      halo: isLetter ? 3.5 : 2,
      haloInk: palette.paper,
    };
  });
}
