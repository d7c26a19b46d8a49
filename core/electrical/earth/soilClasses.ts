import { message } from '../../words/message.ts';
import { type Basis, published } from '../basis.ts';

export interface SoilClass {
  readonly soil: 'fill' | 'clay' | 'mixed' | 'gravel';
  readonly meanOhmM: number;
  readonly lowestOhmM: number;
  readonly highestOhmM: number;
}

/** Converted from ohm centimetres; checked against a reprint of the table, not the paper itself. */
export const soilClassBasis: Basis = published(message('power.sources.soils'));

/** Ranges overlap and moisture alone moves a soil through most of its range, so the earth test decides. */
export const soilClasses: readonly SoilClass[] = [
  { soil: 'fill', meanOhmM: 23.7, lowestOhmM: 5.9, highestOhmM: 70 },
  { soil: 'clay', meanOhmM: 40.6, lowestOhmM: 3.4, highestOhmM: 163 },
  { soil: 'mixed', meanOhmM: 158, lowestOhmM: 10.2, highestOhmM: 1350 },
  { soil: 'gravel', meanOhmM: 940, lowestOhmM: 590, highestOhmM: 4580 },
];
