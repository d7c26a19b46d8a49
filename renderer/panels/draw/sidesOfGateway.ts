import { pointInRing } from '../../../core/geometry/ring.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { type CompassWord, postSide, sideOfOpening } from '../../../core/locate/compass.ts';
import type { LineEnd } from '../../../core/model/things.ts';
import type { GatewayShape } from '../../../core/shapes/types.ts';
import type { Survey } from '../../../core/survey/types.ts';

interface SideOfGateway {
  readonly side: CompassWord;
  /** The paddock that it faces; null: none that fences close in. */
  readonly paddock: string | null;
}

/** So far off the opening the paddock it faces is looked for, metres. */
const asideM = 0.5;

/** The posts and the two sides of a gateway as somebody who stands there sees them. */
export function sidesOfGateway(
  shape: GatewayShape,
  { paddocks }: Survey,
): {
  readonly posts: Readonly<Record<LineEnd, CompassWord>>;
  readonly hands: Readonly<Record<'left' | 'right', SideOfGateway>>;
} {
  const hand = (leftM: number): SideOfGateway => {
    const at = aside(shape, leftM);
    const faced = paddocks.find(
      ({ ring, holes }) => pointInRing(at, ring) && !holes.some((hole) => pointInRing(at, hole)),
    );
    return { side: sideOfOpening(shape, leftM), paddock: faced?.name ?? null };
  };
  return {
    posts: { start: postSide(shape, 'start'), end: postSide(shape, 'end') },
    hands: { left: hand(asideM), right: hand(-asideM) },
  };
}

/** A point beside the middle of the opening; `leftM` below 0: to the right, looking from the start post to the end post. */
function aside({ centre: [x, y], bearingDeg }: GatewayShape, leftM: number): Xy {
  const angle = (bearingDeg * Math.PI) / 180;
  return [x - Math.cos(angle) * leftM, y + Math.sin(angle) * leftM];
}
