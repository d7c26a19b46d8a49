import type { LocalPlane } from '../geometry/localPlane.ts';
import { add, scale, xyBearingDeg, xyDistanceM } from '../geometry/vector.ts';
import type { RecordedOpening } from '../model/recordThings.ts';
import type { Crossing, CrossingDefaults, Gateway } from '../model/things.ts';
import { crossingFigures } from '../shapes/crossingFigures.ts';
import type { CrossingFigures, GatewayShape } from '../shapes/types.ts';

/** An opening and the crossing under it. */
export interface Opening {
  readonly shape: GatewayShape;
  readonly figures: CrossingFigures;
}

interface Asked {
  readonly gateway: Gateway;
  readonly crossing: Crossing;
  readonly plane: LocalPlane;
  readonly defaults: CrossingDefaults;
  /** As drawn now, for what the record does not keep; null where it is not drawn any more. */
  readonly drawn: GatewayShape | null;
}

const kept = new WeakMap<RecordedOpening, { readonly asked: Asked; readonly opening: Opening }>();

/** The opening as the record keeps it, in place of the one that is drawn. Worked out once for each record. */
export function openingAsRecorded(opening: RecordedOpening, asked: Asked): Opening {
  const known = kept.get(opening);
  if (known && (Object.keys(asked) as (keyof Asked)[]).every((key) => known.asked[key] === asked[key])) {
    return known.opening;
  }
  const made = { shape: shapeOf(opening, asked), figures: figuresOf(opening, asked) };
  kept.set(opening, { asked, opening: made });
  return made;
}

/** How far the posts of an opening stand from where it was when it was dug, at most; those of a line turned round count too. */
export function openingMovedM(dug: GatewayShape, drawn: GatewayShape): number {
  const straightM = Math.max(xyDistanceM(dug.startPost, drawn.startPost), xyDistanceM(dug.endPost, drawn.endPost));
  const turnedM = Math.max(xyDistanceM(dug.startPost, drawn.endPost), xyDistanceM(dug.endPost, drawn.startPost));
  return Math.min(straightM, turnedM);
}

function shapeOf(opening: RecordedOpening, { gateway, plane, drawn }: Asked): GatewayShape {
  const { startPostAt, endPostAt, hungFrom } = opening;
  const [startPost, endPost] = [plane.toXy(startPostAt), plane.toXy(endPostAt)];
  const widthM = xyDistanceM(startPost, endPost);
  return {
    gateway: { ...gateway, hungFrom },
    lineLive: drawn?.lineLive ?? true,
    startPost,
    endPost,
    startPostAt,
    endPostAt,
    centre: scale(add(startPost, endPost), 0.5),
    bearingDeg: widthM > 0 ? xyBearingDeg(startPost, endPost) : (drawn?.bearingDeg ?? 0),
    fromM: drawn?.fromM ?? gateway.atM - widthM / 2,
    toM: drawn?.toM ?? gateway.atM + widthM / 2,
    supplyFrom: drawn?.supplyFrom ?? null,
  };
}

function figuresOf(opening: RecordedOpening, { gateway, crossing, plane, defaults }: Asked): CrossingFigures {
  const { startPostAt, endPostAt, bowSide, bowM } = opening;
  const [startPost, endPost] = [plane.toXy(startPostAt), plane.toXy(endPostAt)];
  const bowAssumed = crossing.bowM === null;
  const dug = { ...crossing, bowSide, bowM: crossing.bowM ?? bowM };
  const figures = crossingFigures(dug, gateway, { plane, startPost, endPost, startPostAt, endPostAt }, defaults);
  return { ...figures, crossing: { ...crossing, bowSide }, bowAssumed };
}
