import type { UserConductor } from '../../model/things.ts';
import { assumption, type Basis, commonPractice } from '../basis.ts';
import { type Material, materials } from './materials.ts';
import { ohmPerKmOfArea, ohmPerKmOfRoundWire } from './ohmPerKm.ts';

export interface Conductor {
  readonly id: string;
  readonly name: string;
  /** Bare fence wire leaks along its length; insulated cable does not. */
  readonly kind: 'wire' | 'cable' | 'own';
  readonly ohmPerKm: number;
  readonly basis: Basis;
  /** What trade tables give for the same wire, where it differs: shown beside, not used. */
  readonly trade?: { readonly ohmPerKm: number; readonly basis: Basis };
}

/**
 * Solid wires by diameter and cables by core, each R = rho L / A from its metal's resistivity at 20 degrees C.
 * Poly-wire, tape and rope differ too much between makes to be listed: the user enters the figure on the reel.
 */
export const conductorLibrary: readonly Conductor[] = [
  roundWire('steel-1.6', 'Steel wire 1.6 mm', 'wire', 'zinc-coated steel', 1.6, 85),
  roundWire('steel-2', 'Steel wire 2.0 mm', 'wire', 'zinc-coated steel', 2),
  roundWire('steel-2.5', 'Steel wire 2.5 mm', 'wire', 'zinc-coated steel', 2.5, 35),
  roundWire('steel-4', 'Steel wire 4.0 mm', 'wire', 'zinc-coated steel', 4),
  roundWire('aluminium-2', 'Aluminium wire 2.0 mm', 'wire', 'aluminium', 2),
  roundWire('aluminium-2.5', 'Aluminium wire 2.5 mm', 'wire', 'aluminium', 2.5),
  roundWire('cable-steel-1.6', 'Insulated cable, steel core 1.6 mm', 'cable', 'zinc-coated steel', 1.6, 85),
  roundWire('cable-steel-2.5', 'Insulated cable, steel core 2.5 mm', 'cable', 'zinc-coated steel', 2.5, 35),
  roundWire('cable-aluminium-2.5', 'Insulated cable, aluminium core 2.5 mm', 'cable', 'aluminium', 2.5),
  strandedCable('cable-copper-2.5mm2', 'Insulated cable, copper 2.5 mm²', 'copper', 2.5),
  strandedCable('cable-copper-6mm2', 'Insulated cable, copper 6 mm²', 'copper', 6),
];

/** From the user's own conductors first, then the library; `undefined` where neither has the id. */
export function conductorById(id: string, own: readonly UserConductor[]): Conductor | undefined {
  const entered = own.find((conductor) => conductor.id === id);
  if (entered === undefined) return conductorLibrary.find((conductor) => conductor.id === id);
  const { name, ohmPerKm } = entered;
  return { id, name, kind: 'own', ohmPerKm, basis: assumption('entered by the user for the conductor in hand') };
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
  const conductor = { id, name, kind, ohmPerKm: ohmPerKmOfRoundWire(microOhmM, diameterMm), basis };
  return tradeOhmPerKm === undefined
    ? conductor
    : { ...conductor, trade: { ohmPerKm: tradeOhmPerKm, basis: commonPractice } };
}

function strandedCable(id: string, name: string, material: Material, areaMm2: number): Conductor {
  const { microOhmM, basis } = materials[material];
  return { id, name, kind: 'cable', ohmPerKm: ohmPerKmOfArea(microOhmM, areaMm2), basis };
}
