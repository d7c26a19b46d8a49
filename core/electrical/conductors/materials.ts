import { message } from '../../words/message.ts';
import { type Basis, standard } from '../basis.ts';

export type Material = 'copper' | 'aluminium' | 'zincCoatedSteel';

interface MaterialFigures {
  /** Resistivity at 20 degrees C, in micro-ohm metres (the same number in ohm mm2 per metre). */
  readonly microOhmM: number;
  readonly basis: Basis;
  /** Without any coating. */
  readonly densityKgM3: number;
}

/** Densities: of steel as handbooks reckon it; of aluminium and copper by the same standards as the resistivity, from memory. */
export const materials: Readonly<Record<Material, MaterialFigures>> = {
  copper: { microOhmM: 0.017241, basis: standard(message('power.sources.annealedCopper')), densityKgM3: 8890 },
  aluminium: {
    microOhmM: 0.028264,
    basis: standard(message('power.sources.hardDrawnAluminium'), true),
    densityKgM3: 2703,
  },
  zincCoatedSteel: {
    microOhmM: 0.1916,
    basis: standard(message('power.sources.zincCoatedSteel'), true),
    densityKgM3: 7850,
  },
};
