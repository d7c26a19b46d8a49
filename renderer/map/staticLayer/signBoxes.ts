import { badgePlace, findingReachMm } from '../../../core/drawing/signs/findingSign.ts';
import { type Box, boxesMeet } from '../../../core/geometry/box.ts';
import { type Px, toPx } from '../plane/view.ts';
import type { Part } from '../scene/parts.ts';
import { signOf } from './drawSigns.ts';
import type { Look } from './look.ts';

/** Boxes on the picture, pixels, that no label should cover: the signs of what lies, with some room, in a box of the plane. */
export function signBoxes(look: Look, parts: readonly Part[], within: Box): Box[] {
  const { view, pen, scene } = look;
  const boxes: Box[] = [];
  for (const part of parts) {
    const sign = boxesMeet(part.box, within) ? signOf(look, part) : null;
    if (sign) boxes.push(sign.covers);
  }
  for (const { at } of look.input.findings) {
    if (!at) continue;
    const place = toPx(view, scene.plane.toXy(at));
    const reach = findingReachMm * pen.unit;
    boxes.push(around(place, reach), around(badgePlace(place, pen), reach * 0.7));
  }
  return boxes;
}

const around = ([x, y]: Px, reach: number): Box => [x - reach, y - reach, x + reach, y + reach];
