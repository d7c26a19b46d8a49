import type { OrderSettings } from './things.ts';

/**
 * Common practice, no source, and all of it can be changed: bends and strains, tie-offs, the distance between warning
 * signs (the standard, IEC 60335-2-76 Annex BB, asks for "frequent intervals" and names no figure), trimming.
 * A tightener for each wire of every quarter mile of strain: R. Lemus, "Livestock fencing systems for pasture
 * management", part 3, an extension article.
 */
export const orderDefaults: OrderSettings = {
  kind: 'orderSettings',
  id: 'order',
  currency: null,
  taxPercent: 0,
  count: 'planned',
  angleFromDeg: 10,
  strainerFromDeg: 45,
  maxStrainM: 1000,
  tieOffM: 0.5,
  tightenerEveryM: 402.336,
  signEveryM: 50,
  cutLossM: 0,
  rollTrimM: 0.1,
};
