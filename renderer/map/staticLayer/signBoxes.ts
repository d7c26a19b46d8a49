import { type Box, boxAround, boxesMeet, growBox } from '../../../core/geometry/box.ts';
import { type Px, toPx } from '../plane/view.ts';
import type { Part } from '../scene/parts.ts';
import { switchSignXy } from '../scene/switchSignXy.ts';
import { findingRadiusPx } from '../signs/findingSign.ts';
import { switchReachPx } from '../signs/switchSign.ts';
import type { Look } from './look.ts';

/** Boxes on the picture, pixels, that no label should cover: the signs of what lies, with some room, in a box of the plane. */
export function signBoxes(look: Look, parts: readonly Part[], within: Box): Box[] {
  const { view, signScale, scene } = look;
  const boxes: Box[] = [];
  for (const part of parts) {
    if (!boxesMeet(part.box, within)) continue;
    if (part.kind === 'switch') {
      boxes.push(around(toPx(view, switchSignXy(part, view.pxPerM)), switchReachPx * signScale + 2));
    } else if (part.kind === 'energiser') boxes.push(around(toPx(view, part.xy), 15 * signScale));
    else if (part.kind === 'earthField') boxes.push(around(toPx(view, part.xy), 11 * signScale));
    else if (part.kind === 'post') boxes.push(around(toPx(view, part.xy), 5 * signScale));
    else if (part.kind === 'gateway') {
      const posts = boxAround([toPx(view, part.shape.startPost), toPx(view, part.shape.endPost)]);
      if (posts) boxes.push(growBox(posts, 6 * signScale));
    }
  }
  for (const { at } of look.input.findings) {
    if (at) boxes.push(around(toPx(view, scene.plane.toXy(at)), findingRadiusPx));
  }
  return boxes;
}

const around = ([x, y]: Px, reach: number): Box => [x - reach, y - reach, x + reach, y + reach];
