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
  /** By line id: the edge indices of its runs, in order along the line. Lines that are not in the network have none. */
  readonly runsOfLine: ReadonlyMap<string, readonly number[]>;
  /** By switch id: the edge index of each switch that is in the network. */
  readonly edgeOfSwitch: ReadonlyMap<string, number>;
  /** By gateway id: the nodes at the start and end post of each opening in a live line. */
  readonly postsOfGateway: ReadonlyMap<string, readonly [start: number, end: number]>;
  /** What in the drawing could not be taken at its word. */
  readonly problems: readonly NetworkProblem[];
}

/** Something drawn that the network had to leave out or read in another way; the checks put it into words. */
export interface NetworkProblem {
  readonly code: NetworkProblemCode;
  readonly thingIds: readonly string[];
  readonly at: LonLat | null;
  /** How far beyond, how much overlap, how wide: what the code says; else null. */
  readonly lengthM: number | null;
}

export type NetworkProblemCode =
  /** Fewer than two vertices, or coordinates that are no place on earth: left out. */
  | 'lineNotOnEarth'
  /** All its vertices are one point: left out. */
  | 'lineWithoutLength'
  /** Its fence type is missing or has no live wire; counted as one live wire. */
  | 'lineWithoutLiveWires'
  /** Its line is missing: left out. */
  | 'gatewayWithoutLine'
  /** No opening can be made of its figures: left out. */
  | 'gatewayWithoutWidth'
  /** It reaches past an end of its line by `lengthM`; the opening is cut off there. */
  | 'gatewayBeyondLine'
  /** As wide as its line (`lengthM` long) or wider. */
  | 'gatewayWiderThanLine'
  /** Gateway, gateway: their openings share `lengthM`. */
  | 'gatewaysOverlap'
  /** Gateway, line or lead-out: something touches inside the opening, where there is no wire; it joins nothing. */
  | 'touchInOpening'
  | 'crossingWithoutGateway'
  /** Crossing, crossing: a second one for the same gateway: left out. */
  | 'crossingDoubled'
  /** What it stands on is missing, or it lies beyond its line: left out. */
  | 'switchNowhere'
  /** It stands on a line that is not live: left out. */
  | 'switchOnDeadLine'
  /** It stands inside a gateway's opening: left out. */
  | 'switchInOpening'
  /** Both its sides are joined around it within the snap tolerance: opening it does nothing. */
  | 'switchBypassed'
  /** Switch, switch: two at the same place, one behind the other. */
  | 'switchDoubled'
  | 'energiserNotOnEarth'
  | 'energiserTouchesNothing'
  | 'leadOutWithoutEnergiser'
  | 'leadOutNotOnEarth'
  /** Its last vertex touches no live fence. */
  | 'leadOutTouchesNothing'
  /** Its first vertex is `lengthM` away from its energiser; taken as connected. */
  | 'leadOutStartsElsewhere';

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

/** A piece of live fence line between two nodes; a closed line that nothing touches is one run from a node to itself. */
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

/**
 * A cut-out switch. At a gate post or a line end `from` is the run in which it stands and `to` the post or joint; along
 * a line `from` is the side of the line's start; at a lead-out `from` is the cable.
 */
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

/** What the energisers reach with every switch in its normal position. */
export interface Reach {
  /** 1 for each node and edge that is fed. */
  readonly nodeFed: Uint8Array;
  readonly edgeFed: Uint8Array;
  readonly deadParts: readonly DeadPart[];
}

export interface DeadPart {
  readonly edges: readonly number[];
  readonly lengthM: number;
  readonly lineIds: readonly string[];
  readonly why: DeadReason;
  /** Where to look. */
  readonly at: LonLat;
}

export type DeadReason =
  | { readonly code: 'noEnergiser' }
  | { readonly code: 'energiserTouchesNothing'; readonly energiserId: string }
  | { readonly code: 'openSwitch'; readonly switchIds: readonly string[] }
  | { readonly code: 'noCrossing'; readonly gatewayIds: readonly string[] }
  /** It ends near a live line without touching it. */
  | { readonly code: 'gap'; readonly gapM: number; readonly lineId: string }
  /** It crosses a live line where neither has a vertex. */
  | { readonly code: 'crossesUnjoined'; readonly lineId: string }
  | { readonly code: 'notJoined' };
