import type { Xy } from '../geometry/types.ts';
import type { LonLat } from '../model/things.ts';

/**
 * The drawing as an electrical network. Nodes are points where something ends, meets or is switched; edges join two
 * nodes. Only live fence lines are in it. Indices are positions in `nodes` and `edges`; keys stay the same from one
 * edit to the next for what did not change.
 */
export interface Network {
  readonly nodes: readonly NetworkNode[];
  readonly edges: readonly NetworkEdge[];
  /** Edge indices at each node. */
  readonly edgesAt: readonly (readonly number[])[];
  /** For each energiser: the node it feeds, or null where it touches no fence. */
  readonly sources: readonly Source[];
}

export type NodeRole = 'lineEnd' | 'junction' | 'gatePost' | 'switch' | 'post' | 'energiser' | 'leadOut';

export interface NetworkNode {
  readonly key: string;
  readonly xy: Xy;
  readonly at: LonLat;
  readonly roles: readonly NodeRole[];
}

export interface Source {
  readonly energiserId: string;
  readonly node: number | null;
}

export type NetworkEdge = Run | CrossingEdge | SwitchEdge | LeadOutEdge;

interface EdgeBase {
  readonly key: string;
  readonly from: number;
  readonly to: number;
}

/** A piece of live fence line between two nodes. */
export interface Run extends EdgeBase {
  readonly kind: 'run';
  readonly lineId: string;
  /** Where it begins and ends along its line, `fromM < toM`; `from` is the node at `fromM`. */
  readonly fromM: number;
  readonly toM: number;
  readonly lengthM: number;
  /** Live wires of its fence type; they run side by side, joined at both ends. */
  readonly liveWires: number;
}

/** The live cable past a gateway of a live line; `from` is the gateway's start post. */
export interface CrossingEdge extends EdgeBase {
  readonly kind: 'crossing';
  readonly gatewayId: string;
  /** A gateway without a crossing has no edge: the gap is not bridged. */
  readonly crossingId: string;
  readonly cableLengthM: number;
}

/** A cut-out switch: `from` is the side that stays with the run, `to` the side it can cut off at its place. */
export interface SwitchEdge extends EdgeBase {
  readonly kind: 'switch';
  readonly switchId: string;
  readonly normally: 'closed' | 'open';
}

export interface LeadOutEdge extends EdgeBase {
  readonly kind: 'leadOut';
  readonly leadOutId: string;
  readonly cableLengthM: number;
}
