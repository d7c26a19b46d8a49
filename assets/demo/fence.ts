import { nearestOnPolyline } from '../../core/geometry/polyline.ts';
import type { Xy } from '../../core/geometry/types.ts';
import { xyDistanceM } from '../../core/geometry/vector.ts';
import type { Status } from '../../core/model/things.ts';

export interface FenceKind {
  readonly typeId: string;
  readonly live: boolean;
  readonly status: Status;
}

/** A fence line while it is laid out. Where another line meets it, it gets a vertex there, so that both share it. */
export class Fence {
  readonly name: string;
  readonly kind: FenceKind;
  readonly corners: Xy[];

  constructor(name: string, kind: FenceKind, corners: readonly Xy[]) {
    this.name = name;
    this.kind = kind;
    this.corners = corners.map(toMillimetre);
  }

  get start(): Xy {
    return this.corners[0]!;
  }

  get end(): Xy {
    return this.corners.at(-1)!;
  }

  /** The vertex of this line nearest to a point: one that is there, or a new one on the line. */
  meet(near: Xy): Xy {
    const { segment, point } = nearestOnPolyline(near, this.corners)!;
    const vertex = toMillimetre(point);
    const there = this.corners.find((corner) => xyDistanceM(corner, vertex) < 0.5);
    if (there) return there;
    this.corners.splice(segment + 1, 0, vertex);
    return vertex;
  }
}

function toMillimetre([x, y]: Xy): Xy {
  return [Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000];
}
