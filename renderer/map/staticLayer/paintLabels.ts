import type { Box } from '../../../core/geometry/box.ts';
import { type Label, placeLabels } from '../../../core/geometry/labelPlacement.ts';
import { toXy, type View } from '../plane/view.ts';
import type { Part } from '../scene/parts.ts';
import { type LabelText, labelRequests } from './labelRequests.ts';
import type { Look } from './look.ts';
import { labelSizePx, mapFont } from './mapFont.ts';
import { signBoxes } from './signBoxes.ts';

/** Names, depths and letters, each where it covers neither another nor a sign. */
export function* paintLabels(look: Look, parts: readonly Part[]): Generator<void> {
  const { ctx, view } = look;
  const requests = (yield* labelRequests(look, parts)).filter(
    ({ anchor: [x, y] }) => x > -100 && y > -100 && x < view.widthPx + 100 && y < view.heightPx + 100,
  );
  yield;
  if (requests.length === 0) return;
  const { placed } = placeLabels(requests, { obstacles: signBoxes(look, parts, groundOf(requests, view)) });
  yield;
  for (const [i, { id, box }] of placed.entries()) {
    ctx.font = mapFont(id.style === 'letter' ? 700 : 400);
    ctx.textAlign = 'center';
    ctx.textBaseline = 'middle';
    ctx.lineJoin = 'round';
    if (id.style === 'letter') paintLetter(look, id, box);
    else paintText(look, id, box);
    if (i % 60 === 59) yield;
  }
}

/** Signs reach no further than this from the ground they stand on, pixels. */
const signReachPx = 40;

/** What of the plane the labels might cover, with room for signs. */
function groundOf(requests: readonly Label<LabelText>[], view: View): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { anchor, width, height, candidates } of requests) {
    for (const step of candidates) {
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

function paintText({ ctx, palette }: Look, { text, style }: LabelText, [left, top, right, bottom]: Box): void {
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  const lines = text.split('\n');
  for (const [i, line] of lines.entries()) {
    const lineY = y + (i - (lines.length - 1) / 2) * (labelSizePx + 3);
    ctx.strokeStyle = palette.paper;
    ctx.lineWidth = 4;
    ctx.strokeText(line, x, lineY);
    ctx.fillStyle = style === 'soft' ? palette.inkSoft : palette.ink;
    ctx.fillText(line, x, lineY);
  }
}

function paintLetter({ ctx, palette }: Look, { text }: LabelText, [left, top, right, bottom]: Box): void {
  ctx.beginPath();
  ctx.roundRect(left, top, right - left, bottom - top, (bottom - top) / 2);
  ctx.fillStyle = palette.paper;
  ctx.fill();
  ctx.strokeStyle = palette.ink;
  ctx.lineWidth = 1.6;
  ctx.stroke();
  ctx.fillStyle = palette.ink;
  ctx.fillText(text, (left + right) / 2, (top + bottom) / 2 + 1);
}
