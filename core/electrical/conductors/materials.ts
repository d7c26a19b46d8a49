import { type Basis, standard } from '../basis.ts';

export type Material = 'copper' | 'aluminium' | 'zinc-coated steel';

interface MaterialFigures {
  /** Resistivity at 20 degrees C, in micro-ohm metres (the same number in ohm mm2 per metre). */
  readonly microOhmM: number;
  readonly basis: Basis;
  /** Without any coating. */
  readonly densityKgM3: number;
}

/** Densities: of steel as handbooks reckon it; of aluminium and copper by the same standards as the resistivity, from memory. */
export const materials: Readonly<Record<Material, MaterialFigures>> = {
  copper: { microOhmM: 0.017241, basis: standard('IEC 60028, annealed copper'), densityKgM3: 8890 },
  aluminium: { microOhmM: 0.028264, basis: standard('IEC 60889, hard-drawn aluminium', true), densityKgM3: 2703 },
  'zinc-coated steel': {
    microOhmM: 0.1916,
    basis: standard('IEC 60888, zinc-coated steel at 9 % IACS', true),
    densityKgM3: 7850,
  },
};
