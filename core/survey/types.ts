import type { LocalPlane } from '../geometry/localPlane.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import type { CutOutSwitch, PaddockName, SwitchPlace } from '../model/things.ts';
import type { DeadPart, DeadReason, Network, Reach } from '../network/types.ts';
import type { CrossingFigures, GatewayShape, LineShape } from '../shapes/types.ts';
import type { Message } from '../words/message.ts';
import type { Heights } from './heights/heights.ts';

/**
 * All that is computed from a drawing, in one value. It is made anew after every edit, so it must be cheap: what did
 * not change is taken from the survey before. Screens, sheets and exports read it; nobody computes a figure twice.
 */
export interface Survey {
  /** The working plane that all `xy` are in. */
  readonly plane: LocalPlane;
  /** Working-plane shape of each fence line, by line id; lines whose vertices are no places on earth have none. */
  readonly lines: ReadonlyMap<string, LineShape>;
  readonly gateways: ReadonlyMap<string, GatewayShape>;
  /** By gateway id: the crossing of each gateway that has one. */
  readonly crossings: ReadonlyMap<string, CrossingFigures>;
  readonly paddocks: readonly Paddock[];
  readonly network: Network;
  readonly reach: Reach;
  readonly sections: readonly Section[];
  /** Section index of each network edge; -1 for switches, and for a lead-out with a switch between it and the fence. */
  readonly sectionOfEdge: Int32Array;
  readonly switches: readonly SwitchRow[];
  readonly totals: Totals;
  readonly heights: Heights;
}

export interface Paddock {
  /** The name record whose point lies in it; null until it is named. */
  readonly named: PaddockName | null;
  /** Null where it has none. */
  readonly name: string | null;
  readonly ring: readonly Xy[];
  readonly holes: readonly (readonly Xy[])[];
  readonly areaM2: number;
}

export type { DeadPart, DeadReason, Reach };

/** What stays joined when every cut-out switch is open. */
export interface Section {
  readonly index: number;
  /** A, B, ... Z, AA, ...: in the order in which they are reached from the energiser. */
  readonly letter: string;
  readonly edges: readonly number[];
  readonly nodes: readonly number[];
  readonly lineIds: readonly string[];
  readonly gatewayIds: readonly string[];
  /** Length of fence. */
  readonly lengthM: number;
  /** Switches on its border. */
  readonly switchIds: readonly string[];
  readonly fed: boolean;
  /** An energiser or its lead-out is joined to it with no switch between; false for all where one stands at the lead-out. */
  readonly holdsEnergiser: boolean;
  /** Fence over the limit, or null. */
  readonly overByM: number | null;
  /** Gateways over the limit, or null. */
  readonly overByGateways: number | null;
  /** Where to stand its label. */
  readonly labelXy: Xy;
}

/**
 * How current comes to a switch with every switch as it normally stands, itself too: an open one (`off`) has no current
 * through it. Letters are of the sections on its two sides; null where no section lies there, as on a lead-out's cable.
 */
export type SwitchFeed =
  /** From `supply`; what lies on its `far` side has current through this switch only (none while it is off). */
  | { readonly from: 'oneSide'; readonly supply: string | null; readonly far: string | null; readonly off: boolean }
  /** In a ring, or between two energisers: each side has current without it, so opening it alone cuts nothing off. */
  | { readonly from: 'bothSides'; readonly sides: SwitchSides; readonly off: boolean }
  /** Neither side has current. */
  | { readonly from: 'nowhere'; readonly sides: SwitchSides; readonly off: boolean }
  /** It stands in no live fence and no lead-out, so it switches nothing. */
  | { readonly from: 'notInFence'; readonly off: boolean };

export type SwitchSides = readonly [string | null, string | null];

export interface SwitchRow {
  readonly switch: CutOutSwitch;
  readonly xy: Xy;
  readonly at: LonLat;
  /** Unit vector along the fence from the supply side to the far side. */
  readonly along: Xy;
  /** Where it stands. */
  readonly where: Message;
  readonly feed: SwitchFeed;
  /** Fence, gateways and sections that go dead when it alone is opened. */
  readonly cutsOff: {
    readonly lengthM: number;
    readonly gatewayIds: readonly string[];
    readonly sections: readonly string[];
  };
  /** On the wrong side of its crossing, so that the cable stays live. */
  readonly wrongSide: boolean;
}

export interface Totals {
  readonly fenceM: number;
  readonly liveFenceM: number;
  readonly liveWireM: number;
  readonly fedFenceM: number;
  readonly paddockAreaM2: number;
  readonly paddocks: number;
  readonly gateways: number;
  readonly trenchM: number;
  readonly pipeM: number;
  readonly liveCableM: number;
  readonly earthCableM: number;
}

/** A place where a cut-out switch could go. */
export interface SwitchCandidate {
  /** What it stands on, as text: see `core/model/placeKey.ts`. */
  readonly key: string;
  readonly why: 'gateway' | 'takeOff' | 'strainer' | 'added' | 'existing';
  readonly place: SwitchPlace;
  /** Where it is: "G4", "F12 at F3", "P7 on F2". */
  readonly label: Message;
  readonly xy: Xy;
  readonly cost: number;
  readonly rule: 'forced' | 'forbidden' | null;
  /** Switches drawn there. */
  readonly switchIds: readonly string[];
}

/** The suggested division, beside the switches that are already drawn. */
export interface DividePlan {
  readonly candidates: readonly SwitchCandidate[];
  /** Keys of the chosen candidates. */
  readonly chosen: readonly string[];
  readonly cost: number;
  readonly longestSectionM: number;
  readonly sections: readonly { readonly lengthM: number; readonly gateways: number }[];
  /** Proven cheapest; else `costBound` is the least that any plan could cost. */
  readonly optimal: boolean;
  readonly costBound: number;
  /** The planning went on to its end; otherwise a cheaper plan may yet be found. */
  readonly complete: boolean;
  /** What no set of switches brings within the limits; the plan keeps the rest within them. */
  readonly overLimit: readonly OverLimitStretch[];
  /** Chosen, and not yet drawn. */
  readonly missing: readonly SwitchCandidate[];
  /** Drawn, and not needed by the plan (ids); pinned and built ones are never here. */
  readonly surplus: readonly string[];
  /**
   * Keys of chosen places, one for each ring of sections, whose switches may all stand open together with nothing dead:
   * those where the ways round from the energiser meet.
   */
  readonly mayStandOpen: readonly string[];
  /** What leaving each chosen place out, or keeping each surplus switch, would mean. */
  readonly changes: readonly PlanChange[];
}

/** Fence that hangs together whatever switches are chosen, and is over a limit by itself. */
export interface OverLimitStretch {
  /** The lines that it is part of, the one with most of it first. */
  readonly lineIds: readonly string[];
  readonly lengthM: number;
  readonly gateways: number;
  /** 0 where it keeps that limit. */
  readonly overByM: number;
  readonly overByGateways: number;
  /** Places on it where the user wants no switch. */
  readonly barred: readonly Message[];
  readonly at: LonLat | null;
}

/** The price of a change to the plan. */
export type PlanChange =
  /** The two sections that the switch parts become one, this long and with so many gateways. */
  | {
      readonly kind: 'leaveOut';
      readonly candidateKey: string;
      readonly label: Message;
      readonly lengthM: number;
      readonly gateways: number;
      /** 0 where the joined section would still be within the limit. */
      readonly overByM: number;
      readonly overByGateways: number;
    }
  /** Relative cost of a switch that the plan does without. */
  | { readonly kind: 'keep'; readonly switchId: string; readonly name: string; readonly cost: number };

/** How to test one section on its own. */
export interface TestSheet {
  readonly section: string;
  /** Switches to open so that only this section and the way to it are live, the nearest to the energiser first. */
  readonly open: readonly string[];
  /** Switches on the way to it, which stay closed. */
  readonly closed: readonly string[];
  /** Switches to open so that it alone, with what hangs on it, is dead. */
  readonly cutOff: readonly string[];
  /** Letters of the sections that are live while it is tested: those on the way, then itself. Empty: nothing reaches it. */
  readonly live: readonly string[];
  /** Where to read: what it is near, its place, and its network node. */
  readonly readAt: readonly { readonly text: Message; readonly at: LonLat; readonly node: number }[];
  readonly steps: readonly Message[];
}
