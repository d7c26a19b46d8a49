/**
 * A fence network as the voltage estimate sees it: node numbers `0 .. nodeCount - 1`, no ids, no map.
 * Everything is resistive and at the pulse's peak (DC); voltages are to earth and the earth return is ideal,
 * except for what the source's `internalOhm` includes (see `earth/sourceThroughEarth.ts`).
 */
export interface FenceCircuit {
  readonly nodeCount: number;
  readonly spans: readonly Span[];
  readonly links: readonly Link[];
  readonly faults: readonly Fault[];
  readonly source: Source;
}

/** A stretch of live wire, its resistance and its leakage spread evenly along it. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly lengthM: number;
  /** Of all live wires together (n equal wires joined at both ends: 1/n of one). */
  readonly ohmPerKm: number;
  /** Resistance to earth of one kilometre; `Infinity` for insulated cable or a wire that does not leak. */
  readonly leakageOhmKm: number;
}

/** A switch, joint, clamp or short cable with no leakage of its own. `ohm` 0 is a perfect joint. */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly ohm: number;
  /** An open link conducts nothing. */
  readonly open: boolean;
}

/** A path to earth at one node. `ohm` 0 is a dead short. */
export interface Fault {
  readonly node: number;
  readonly ohm: number;
}

/** The energiser at its lead-out's node: open-circuit peak behind a resistance. */
export interface Source {
  readonly node: number;
  readonly openCircuitV: number;
  readonly internalOhm: number;
}
