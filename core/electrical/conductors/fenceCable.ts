import { buildingWires } from './conductorLibrary.ts';

/**
 * What is said wherever a cable is chosen or bought. The standard (IEC 60335-2-76, Annex BB, paraphrased) asks for
 * insulating conduit or insulated high-voltage cable underground; the figure of 10 kV is common practice, no source.
 */
export const cableRatingCaution =
  'Fence lead-out cable rated 10 kV or more only. Building wire and extension leads are not made for the voltage of a fence.';

/** Said where a size of building wire is entered as the live cable. */
export const buildingWireCaution =
  'This is a size of building wire: its insulation is not made for the voltage of a fence. Choose fence lead-out cable rated 10 kV or more; if building wire lies in the ground already, replace it.';

/** The same beside a line of an order. */
export const cableOrderNote = 'Fence lead-out cable rated 10 kV or more only, never building wire.';

/** IEC 60335-2-76, Annex BB, BB.1, paraphrased. */
export const oneConduitRule =
  'Never in one conduit with mains, communication or data cables (IEC 60335-2-76, Annex BB). In one trench: ask their owner and the local rules how far apart.';

/** Whether this is a size of building wire, whose insulation is not made for a fence. */
export function isBuildingWire(conductorId: string): boolean {
  return buildingWires.some(({ id }) => id === conductorId);
}
