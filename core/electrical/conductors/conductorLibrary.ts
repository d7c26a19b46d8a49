import type { UserConductor } from '../../model/things.ts';
import { assumption, type Basis, commonPractice } from '../basis.ts';
import { type Material, materials } from './materials.ts';
import { ohmPerKmOfArea, ohmPerKmOfRoundWire } from './ohmPerKm.ts';

export interface Conductor {
  readonly id: string;
  readonly name: string;
  /** Bare fence wire leaks along its length; fence lead-out cable does not. Building wire is not made for a fence. */
  readonly kind: 'wire' | 'cable' | 'buildingWire' | 'own';
  /** Its metal, where it is one solid round core. */
  readonly core?: { readonly material: Material; readonly diameterMm: number };
  readonly ohmPerKm: number;
  readonly basis: Basis;
  /** What trade tables give for the same wire, where it differs: shown beside, not used. */
  readonly trade?: { readonly ohmPerKm: number; readonly basis: Basis };
}

/**
 * Solid wires and fence lead-out cables by the diameter of their core, each R = rho L / A from its metal's resistivity
 * at 20 degrees C. That cables are sold with these cores: common practice, no source. Poly-wire, tape and rope differ
 * too much between makes to be listed: the user enters the figure on the reel.
 */
export const conductorLibrary: readonly Conductor[] = [
  roundWire('steel-1.6', 'Steel wire 1.6 mm', 'wire', 'zinc-coated steel', 1.6, 85),
  roundWire('steel-2', 'Steel wire 2.0 mm', 'wire', 'zinc-coated steel', 2),
  roundWire('steel-2.5', 'Steel wire 2.5 mm', 'wire', 'zinc-coated steel', 2.5, 35),
  roundWire('steel-4', 'Steel wire 4.0 mm', 'wire', 'zinc-coated steel', 4),
  roundWire('aluminium-2', 'Aluminium wire 2.0 mm', 'wire', 'aluminium', 2),
  roundWire('aluminium-2.5', 'Aluminium wire 2.5 mm', 'wire', 'aluminium', 2.5),
  roundWire('cable-steel-1.6', leadOutCable('steel', '1.6'), 'cable', 'zinc-coated steel', 1.6, 85),
  roundWire('cable-steel-2.5', leadOutCable('steel', '2.5'), 'cable', 'zinc-coated steel', 2.5, 35),
  roundWire('cable-aluminium-2.5', leadOutCable('aluminium', '2.5'), 'cable', 'aluminium', 2.5),
  roundWire('cable-copper-1.6', leadOutCable('copper', '1.6'), 'cable', 'copper', 1.6),
  roundWire('cable-copper-2.5', leadOutCable('copper', '2.5'), 'cable', 'copper', 2.5),
];

/**
 * Sizes of building wire that the library once offered. Files that name them compute with them as before; nothing
 * offers them any more, because their insulation is not made for the voltage of a fence.
 */
export const buildingWires: readonly Conductor[] = [
  buildingWire('cable-copper-2.5mm2', 'Building wire, copper 2.5 mm², not made for a fence', 2.5),
  buildingWire('cable-copper-6mm2', 'Building wire, copper 6 mm², not made for a fence', 6),
];

const known = new Map([...conductorLibrary, ...buildingWires].map((conductor) => [conductor.id, conductor]));

/** From the user's own conductors first, then the library and what it once had; `undefined` where none has the id. */
export function conductorById(id: string, own: readonly UserConductor[]): Conductor | undefined {
  const entered = own.find((conductor) => conductor.id === id);
  if (entered === undefined) return known.get(id);
  const { name, ohmPerKm } = entered;
  return { id, name, kind: 'own', ohmPerKm, basis: assumption('entered by the user for the conductor in hand') };
}

/** How a cable of fence voltage is named, in lists and on orders; the rating: common practice, no source. */
function leadOutCable(core: string, diameterMm: string): string {
  return `Fence lead-out cable, ${core} core ${diameterMm} mm, rated 10 kV or more`;
}

function roundWire(
  id: string,
  name: string,
  kind: 'wire' | 'cable',
  material: Material,
  diameterMm: number,
  tradeOhmPerKm?: number,
): Conductor {
  const { microOhmM, basis } = materials[material];
  const ohmPerKm = ohmPerKmOfRoundWire(microOhmM, diameterMm);
  const conductor = { id, name, kind, core: { material, diameterMm }, ohmPerKm, basis };
  return tradeOhmPerKm === undefined
    ? conductor
    : { ...conductor, trade: { ohmPerKm: tradeOhmPerKm, basis: commonPractice } };
}

function buildingWire(id: string, name: string, areaMm2: number): Conductor {
  const { microOhmM, basis } = materials.copper;
  return { id, name, kind: 'buildingWire', ohmPerKm: ohmPerKmOfArea(microOhmM, areaMm2), basis };
}
