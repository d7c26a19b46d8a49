import type { Box } from '../../../core/geometry/box.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import type { LeftInGround } from '../../../core/locate/inGround/leftInGround.ts';
import type { EarthField, Energiser, LeadOut, Post, Service } from '../../../core/model/things.ts';
import type { CrossingFigures, GatewayShape, LineShape } from '../../../core/shapes/types.ts';
import type { Paddock, SwitchRow } from '../../../core/survey/types.ts';
import type { MapId } from '../mapTypes.ts';

/** Something that the map draws and that can be chosen. `id` is what choosing it chooses. */
export type Part =
  | PiecePart
  | GatewayPart
  | CrossingPart
  | SwitchPart
  | PostPart
  | EnergiserPart
  | EarthFieldPart
  | LeadOutPart
  | InGroundPart
  | ServicePart
  | PaddockPart;

interface PartBase {
  readonly id: MapId;
  readonly box: Box;
}

/** A stretch of fence between two nodes of the network, or between two openings where the line is not live. */
export interface PiecePart extends PartBase {
  readonly kind: 'piece';
  readonly shape: LineShape;
  readonly fromM: number;
  readonly toM: number;
  readonly xy: readonly Xy[];
  /** Edge of the network, or -1 for a line that is not live. */
  readonly edge: number;
}

export interface GatewayPart extends PartBase {
  readonly kind: 'gateway';
  readonly shape: GatewayShape;
}

export interface CrossingPart extends PartBase {
  readonly kind: 'crossing';
  readonly figures: CrossingFigures;
  readonly shape: GatewayShape;
  /** Edge of the network, or -1. */
  readonly edge: number;
}

export interface SwitchPart extends PartBase {
  readonly kind: 'switch';
  readonly row: SwitchRow;
  /** Unit vector into the fence that it stands in, away from the gate post or the junction it is at; zero along a line. */
  readonly into: Xy;
}

export interface PostPart extends PartBase {
  readonly kind: 'post';
  readonly post: Post;
  readonly xy: Xy;
}

export interface EnergiserPart extends PartBase {
  readonly kind: 'energiser';
  readonly energiser: Energiser;
  readonly xy: Xy;
}

export interface EarthFieldPart extends PartBase {
  readonly kind: 'earthField';
  readonly earthField: EarthField;
  readonly xy: Xy;
}

export interface LeadOutPart extends PartBase {
  readonly kind: 'leadOut';
  readonly leadOut: LeadOut;
  readonly xy: readonly Xy[];
}

/** Something left in the ground that is drawn no longer. */
export interface InGroundPart extends PartBase {
  readonly kind: 'inGround';
  readonly left: LeftInGround;
}

export interface ServicePart extends PartBase {
  readonly kind: 'service';
  readonly service: Service;
  readonly xy: readonly Xy[];
}

export interface PaddockPart extends PartBase {
  readonly kind: 'paddock';
  readonly paddock: Paddock;
}
