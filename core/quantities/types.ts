import type { Message } from '../words/message.ts';

/** One part of a quantity: how much, for what, and in words why. */
export interface Piece {
  /** The things that need it; any of them lights it up. The first stage that one of them is done in has it. */
  readonly thingIds: readonly string[];
  readonly amount: number;
  readonly text: Message;
}

export type QuantityUnit = 'each' | 'm' | 'km';

export type QuantityGroup =
  | 'wire'
  | 'posts'
  | 'fittings'
  | 'gateways'
  | 'crossings'
  | 'switches'
  | 'supply'
  | 'signs'
  | 'work';

/** How much of one sort of thing the drawing asks for, with the pieces that make it up. */
export interface Quantity {
  /** What it is of, for price lists and kits: "pipe:19", "strainer". */
  readonly key: string;
  readonly group: QuantityGroup;
  readonly name: Message;
  readonly unit: QuantityUnit;
  readonly amount: number;
  readonly pieces: readonly Piece[];
  /** Each piece is one length that must not be joined: pipe and cable underground. */
  readonly cut: boolean;
}

/** What could not be counted, and why. */
export interface NotCounted {
  readonly code: 'noFenceType' | 'lineNotOnEarth' | 'gatewayWithoutOpening';
  readonly thingId: string;
  readonly name: string;
}

export interface TakeOff {
  readonly quantities: readonly Quantity[];
  readonly notCounted: readonly NotCounted[];
}
