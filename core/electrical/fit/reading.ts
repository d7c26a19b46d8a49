/** A peak voltage read at a node, with the switches that stood otherwise than in the circuit. */
export interface VoltageReading {
  readonly node: number;
  readonly volts: number;
  /** Standard error of the reading; {@link usualSigmaV} where it is not known. */
  readonly sigmaV?: number;
  readonly openLinks?: readonly number[];
  readonly closedLinks?: readonly number[];
}

/** Assumption: a fence tester is good to about 3 % and reads in steps of 0.1 kV. */
export function usualSigmaV(volts: number): number {
  return Math.hypot(0.03 * volts, 50);
}
