import type { UserConductor } from '../../model/things.ts';
import { type Message, message } from '../../words/message.ts';
import { assumption, type Basis, commonPractice } from '../basis.ts';
import { type Material, materials } from './materials.ts';
import { ohmPerKmOfArea, ohmPerKmOfRoundWire } from './ohmPerKm.ts';

export interface Conductor {
  readonly id: string;
  readonly name: Message;
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
 * at 20 degrees C. That cables are sold with these cores, and their rating: common practice, no source. Poly-wire, tape and rope differ
 * too much between makes to be listed: the user enters the figure on the reel.
 */
export const conductorLibrary: readonly Conductor[] = [
  roundWire('steel-1.6', 'wire', 'zincCoatedSteel', 1.6, 85),
  roundWire('steel-2', 'wire', 'zincCoatedSteel', 2),
  roundWire('steel-2.5', 'wire', 'zincCoatedSteel', 2.5, 35),
  roundWire('steel-4', 'wire', 'zincCoatedSteel', 4),
  roundWire('aluminium-2', 'wire', 'aluminium', 2),
  roundWire('aluminium-2.5', 'wire', 'aluminium', 2.5),
  roundWire('cable-steel-1.6', 'cable', 'zincCoatedSteel', 1.6, 85),
  roundWire('cable-steel-2.5', 'cable', 'zincCoatedSteel', 2.5, 35),
  roundWire('cable-aluminium-2.5', 'cable', 'aluminium', 2.5),
  roundWire('cable-copper-1.6', 'cable', 'copper', 1.6),
  roundWire('cable-copper-2.5', 'cable', 'copper', 2.5),
];

/**
 * Sizes of building wire that the library once offered. Files that name them compute with them as before; nothing
 * offers them any more, because their insulation is not made for the voltage of a fence.
 */
export const buildingWires: readonly Conductor[] = [
  buildingWire('cable-copper-2.5mm2', 2.5),
  buildingWire('cable-copper-6mm2', 6),
];

const known = new Map([...conductorLibrary, ...buildingWires].map((conductor) => [conductor.id, conductor]));

/** From the user's own conductors first, then the library and what it once had; `undefined` where none has the id. */
export function conductorById(id: string, own: readonly UserConductor[]): Conductor | undefined {
  const entered = own.find((conductor) => conductor.id === id);
  if (entered === undefined) return known.get(id);
  const { name, ohmPerKm } = entered;
  return {
    id,
    name: message('power.conductors.own', { name }),
    kind: 'own',
    ohmPerKm,
    basis: assumption(message('power.sources.ownConductor')),
  };
}

function roundWire(
  id: string,
  kind: 'wire' | 'cable',
  material: Material,
  diameterMm: number,
  tradeOhmPerKm?: number,
): Conductor {
  const { microOhmM, basis } = materials[material];
  const ohmPerKm = ohmPerKmOfRoundWire(microOhmM, diameterMm);
  const name = message(`power.conductors.${kind}`, { metal: material, diameterMm });
  const conductor = { id, name, kind, core: { material, diameterMm }, ohmPerKm, basis };
  return tradeOhmPerKm === undefined
    ? conductor
    : { ...conductor, trade: { ohmPerKm: tradeOhmPerKm, basis: commonPractice } };
}

function buildingWire(id: string, areaMm2: number): Conductor {
  const { microOhmM, basis } = materials.copper;
  const name = message('power.conductors.buildingWire', { metal: 'copper', areaMm2 });
  return { id, name, kind: 'buildingWire', ohmPerKm: ohmPerKmOfArea(microOhmM, areaMm2), basis };
}
