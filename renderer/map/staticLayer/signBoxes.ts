import { badgePlace, findingReachMm } from '../../../core/drawing/signs/findingSign.ts';
import { type Box, boxAround, boxesMeet, growBox } from '../../../core/geometry/box.ts';
import { findingPen } from '../plane/screenPen.ts';
import { type Px, toPx } from '../plane/view.ts';
import type { GatewayPart, Part } from '../scene/parts.ts';
import { signOf } from './drawSigns.ts';
import type { Look } from './look.ts';

/** Boxes on the picture, pixels, that no label should cover: the signs of what lies, with some room, in a box of the plane. */
export function signBoxes(look: Look, parts: readonly Part[], within: Box): Box[] {
  const { view, pen, scene } = look;
  const boxes: Box[] = [];
  for (const part of parts) {
    if (!boxesMeet(part.box, within)) continue;
    // Between the leaves of a gateway there is room for its name and the depth.
    const box = part.kind === 'gateway' ? postsBox(look, part) : signOf(look, part)?.covers;
    if (box) boxes.push(box);
  }
  for (const { at } of look.input.findings) {
    if (!at) continue;
    const place = toPx(view, scene.plane.toXy(at));
    const reach = findingReachMm * findingPen(pen).unit;
    boxes.push(around(place, reach), around(badgePlace(place, findingPen(pen)), reach * 0.7));
  }
  return boxes;
}

function postsBox({ view, pen }: Look, { shape }: GatewayPart): Box {
  return growBox(boxAround([toPx(view, shape.startPost), toPx(view, shape.endPost)])!, 0.8 * pen.unit);
}

const around = ([x, y]: Px, reach: number): Box => [x - reach, y - reach, x + reach, y + reach];
