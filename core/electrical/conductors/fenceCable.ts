import { buildingWires } from './conductorLibrary.ts';

/**
 * Whether this is a size of building wire, whose insulation is not made for a fence. What is said wherever a cable is
 * chosen or bought stands under `power.conductors`: the standard (IEC 60335-2-76, Annex BB, BB.1, paraphrased) asks for
 * insulating conduit or insulated high-voltage cable underground; the figure of 10 kV is common practice, no source.
 */
export function isBuildingWire(conductorId: string): boolean {
  return buildingWires.some(({ id }) => id === conductorId);
}
