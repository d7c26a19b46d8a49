import type { Figures } from '../../types.ts';

/** What a core is made of, inside of a sentence. */
export const metals = { zincCoatedSteel: 'steel', aluminium: 'aluminium', copper: 'copper' };
const wires = { zincCoatedSteel: 'Steel wire', aluminium: 'Aluminium wire', copper: 'Copper wire' };
const cores = { zincCoatedSteel: 'Steel core', aluminium: 'Aluminium core', copper: 'Copper core' };

/** What conductors are made of. */
export type Metal = keyof typeof metals;

/** The conductors of the library, and what is said wherever a cable is chosen or bought. */
export const conductors = {
  wire: ({ metal, diameterMm }: { metal: Metal; diameterMm: number }, f: Figures) =>
    `${wires[metal]} ${f.number(diameterMm, 1)} mm`,
  cable: ({ metal, diameterMm }: { metal: Metal; diameterMm: number }, f: Figures) =>
    `Fence lead-out cable, ${metals[metal]} core ${f.number(diameterMm, 1)} mm, rated 10 kV or more`,
  buildingWire: ({ metal, areaMm2 }: { metal: Metal; areaMm2: number }, f: Figures) =>
    `Building wire, ${metals[metal]} ${f.number(areaMm2)} mm², not made for a fence`,
  /** Of the user's own. */
  own: ({ name }: { name: string }) => name,
  /** In a list to select from. */
  withOhm: ({ name, ohmPerKm }: { name: string; ohmPerKm: number }, f: Figures) =>
    `${name}, ${ohmFigure(ohmPerKm, f)} ohm/km`,
  /** The same of a cable: what tells them apart comes first, as the field is too narrow for the whole. */
  cableWithOhm: ({ metal, diameterMm, ohmPerKm }: { metal: Metal; diameterMm: number; ohmPerKm: number }, f: Figures) =>
    `${cores[metal]} ${f.number(diameterMm, 1)} mm, ${ohmFigure(ohmPerKm, f)} ohm/km: fence lead-out cable, rated 10 kV or more`,
  ratingCaution:
    'Fence lead-out cable rated 10 kV or more only. Building wire and extension leads are not made for the voltage of a fence.',
  buildingWireCaution:
    'This is a size of building wire: its insulation is not made for the voltage of a fence. Select fence lead-out cable rated 10 kV or more; if building wire lies in the ground already, replace it.',
  orderNote: 'Fence lead-out cable rated 10 kV or more only, never building wire.',
  oneConduit:
    'Never in one conduit with mains, communication or data cables (IEC 60335-2-76, Annex BB). In one trench: ask their owner and the local rules how far apart.',
};

/** Ohm per km as it is shown. */
export function ohmFigure(ohmPerKm: number, f: Figures): string {
  return f.number(ohmPerKm, ohmPerKm < 10 ? 1 : 0);
}
