import { type Basis, standard } from '../basis.ts';

export type Material = 'copper' | 'aluminium' | 'zinc-coated steel';

/** Resistivity at 20 degrees C, in micro-ohm metres (the same number in ohm mm2 per metre). */
export const materials: Readonly<Record<Material, { readonly microOhmM: number; readonly basis: Basis }>> = {
  copper: { microOhmM: 0.017241, basis: standard('IEC 60028, annealed copper') },
  aluminium: { microOhmM: 0.028264, basis: standard('IEC 60889, hard-drawn aluminium', true) },
  'zinc-coated steel': { microOhmM: 0.1916, basis: standard('IEC 60888, zinc-coated steel at 9 % IACS', true) },
};
