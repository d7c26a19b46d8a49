import type { LonLat, Xy } from '../geometry/types.ts';
import type { Crossing, FenceLine, FenceType, Gateway, LineEnd } from '../model/things.ts';
import type { MeasuredPath } from './measuredPath.ts';

/** A fence line, measured. */
export interface LineShape extends MeasuredPath {
  readonly line: FenceLine;
  readonly type: FenceType | null;
}

export interface GatewayShape {
  readonly gateway: Gateway;
  readonly lineLive: boolean;
  readonly startPost: Xy;
  readonly endPost: Xy;
  readonly startPostAt: LonLat;
  readonly endPostAt: LonLat;
  readonly centre: Xy;
  /** From the start post to the end post, degrees clockwise from plane north. */
  readonly bearingDeg: number;
  /** Stations of the two posts on the line. */
  readonly fromM: number;
  readonly toM: number;
  /** Which post the supply comes from; null where the line is dead or not fed. */
  readonly supplyFrom: LineEnd | 'both' | null;
}

/** A crossing with all its lengths worked out (see `core/geometry/conduit.ts` for the formulas). */
export interface CrossingFigures {
  readonly crossing: Crossing;
  readonly gateway: Gateway;
  /** How far the middle of the trench stands off the straight line; never below 0. */
  readonly bowM: number;
  /** True where the bow is the default share of the width: an assumption until someone measures it. */
  readonly bowAssumed: boolean;
  /** Plan of the trench from the start post's riser foot to the end post's. */
  readonly path: readonly Xy[];
  /** Straight from post to post. */
  readonly chordM: number;
  /** Infinity for a straight trench. */
  readonly bendRadiusM: number;
  readonly tighterThanPipeAllows: boolean;
  readonly trenchM: number;
  readonly pipeM: number;
  readonly liveCableM: number;
  /** 0 where no earth goes across. */
  readonly earthCableM: number;
}
