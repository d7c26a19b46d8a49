import { type Basis, published } from '../basis.ts';

export interface SoilClass {
  readonly name: string;
  readonly meanOhmM: number;
  readonly lowestOhmM: number;
  readonly highestOhmM: number;
}

/** Converted from ohm centimetres; checked against a reprint of the table, not the paper itself. */
export const soilClassBasis: Basis = published(
  'O. S. Peters, "Ground Connections for Electrical Systems", US Bureau of Standards Technologic Paper 108 (1918), resistivities of different soils',
);

/** Ranges overlap and moisture alone moves a soil through most of its range, so the earth test decides. */
export const soilClasses: readonly SoilClass[] = [
  { name: 'Fill: ashes, cinders, brine waste', meanOhmM: 23.7, lowestOhmM: 5.9, highestOhmM: 70 },
  { name: 'Clay, shale, gumbo, loam', meanOhmM: 40.6, lowestOhmM: 3.4, highestOhmM: 163 },
  { name: 'The same, mixed with sand or gravel', meanOhmM: 158, lowestOhmM: 10.2, highestOhmM: 1350 },
  { name: 'Gravel, sand, stones, little clay or loam', meanOhmM: 940, lowestOhmM: 590, highestOhmM: 4580 },
];
