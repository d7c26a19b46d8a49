import type { FenceCircuit } from '../../electrical/circuit/circuit.ts';
import type { EarthFieldEstimate } from '../../electrical/earth/earthFieldOhm.ts';
import type { PreparedVoltage } from '../../electrical/preparedVoltage.ts';
import type { Voltages } from '../../electrical/voltageResult.ts';
import type { LonLat } from '../../geometry/types.ts';
import type { Project } from '../../model/project.ts';
import type { EarthField, Energiser } from '../../model/things.ts';
import type { Spot } from '../../words/en/survey/spots.ts';
import type { Message } from '../../words/message.ts';
import type { Survey } from '../types.ts';

/** Why a voltage is not known, or what an estimate leaves out. */
export interface PowerProblem {
  readonly code:
    | 'noLiveFence'
    | 'noEnergiser'
    | 'energiserTouchesNothing'
    | 'twoEnergisers'
    | 'label'
    | 'unknownConductor'
    | 'badFigure'
    | 'noEarthStakes';
  /** 'refused': nothing is estimated there. 'leftOut': it is, without this. */
  readonly weight: 'refused' | 'leftOut';
  readonly message: Message;
  readonly remedy: Message;
  /** The rule's source, or null. */
  readonly source: Message | null;
  readonly thingIds: readonly string[];
}

/** All that one energiser can feed, as a circuit. */
export interface SupplyCircuit {
  readonly energiser: Energiser;
  /** Of its label alone. */
  readonly internalOhm: number;
  readonly earth: SupplyEarth;
  /** Its nodes are the network's; its switches stand as they normally do. */
  readonly circuit: FenceCircuit;
  /** Network edge of each span (runs) and of each link (switches, crossings, lead-outs). */
  readonly edgeOfSpan: readonly number[];
  readonly edgeOfLink: readonly number[];
  /** By switch id. */
  readonly linkOfSwitch: ReadonlyMap<string, number>;
}

/** The earth stakes of one energiser. */
export interface SupplyEarth {
  /** Of all its fields together; null where none is drawn, which is then left out of the circuit. */
  readonly ohm: number | null;
  readonly fields: readonly { readonly field: EarthField; readonly estimate: EarthFieldEstimate }[];
}

export interface Supply extends SupplyCircuit {
  readonly prepared: PreparedVoltage;
}

/** Everything about the voltage of a drawing that does not depend on how the switches stand. */
export interface Power {
  readonly project: Project;
  readonly survey: Survey;
  readonly supplies: readonly Supply[];
  readonly problems: readonly PowerProblem[];
  /** Index in `supplies` by network node; `nothingFeedsIt` or `notKnown` where there is none. */
  readonly supplyOfNode: Int32Array;
  /** Span of each network edge that is a run, in its supply's circuit; -1 for others. */
  readonly spanOfEdge: Int32Array;
  /** Ids of the switches that normally stand open. */
  readonly normallyOpen: ReadonlySet<string>;
}

/** In `supplyOfNode`: no energiser can feed it, however the switches stand. */
export const nothingFeedsIt = -1;
/** In `supplyOfNode`: something feeds it, but a figure is missing or a rule is broken. */
export const notKnown = -2;

/** A place on the fence with its estimate. */
export interface FencePlace {
  readonly volts: number;
  readonly spot: Spot;
  readonly at: LonLat;
  /** What stands there: a fence line, a gateway, a switch or the energiser. */
  readonly thingId: string | null;
  /** Network node, where the place is one; else the run it lies in, and how far from the run's `from`. */
  readonly where:
    | { readonly on: 'node'; readonly node: number }
    | { readonly on: 'run'; readonly edge: number; readonly distanceM: number };
}

/** Estimated peaks with the switches standing in one way. */
export interface Estimate {
  readonly openSwitchIds: ReadonlySet<string>;
  /** By network node: volts; 0 where it is dead, NaN where it is not known. */
  readonly nodeV: Float64Array;
  /** 1 where current comes. */
  readonly nodeFed: Uint8Array;
  /** In the order of `Power.supplies`. */
  readonly supplies: readonly SupplyEstimate[];
  /** The weakest place of all supplies. */
  readonly weakest: FencePlace | null;
}

export interface SupplyEstimate {
  readonly voltages: Voltages;
  readonly weakest: FencePlace | null;
  /** Of the earth field itself to far earth; null where no stakes are drawn. */
  readonly earthV: number | null;
}
