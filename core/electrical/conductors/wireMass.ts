import { type Material, materials } from './materials.ts';

/**
 * Length of a coil of round wire of so much metal: mass / (density x area). Zinc adds a few per cent to the mass of
 * steel wire, so a coil that weighs this much holds a little less; what its label says goes before it.
 */
export function coilLengthM(massKg: number, material: Material, diameterMm: number): number {
  return massKg / kgPerM(material, diameterMm);
}

/** Mass of the metal of one metre of round wire, without coating. */
export function kgPerM(material: Material, diameterMm: number): number {
  return materials[material].densityKgM3 * (Math.PI / 4) * (diameterMm / 1000) ** 2;
}
