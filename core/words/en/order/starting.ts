import type { Figures, Phrase } from '../../types.ts';

type Roll = { readonly lengthM: number };

/** The goods of the price list that every property begins with, as a shop calls them: their measures are names. */
export const starting = {
  coil: ({ conductor, massKg, lengthM }: { conductor: Phrase; massKg: number } & Roll, f: Figures) =>
    `${f.say(conductor)}, coil of ${f.number(massKg)} kg, about ${f.number(lengthM, 0)} m`,
  coilNote: 'Length by mass and gauge of the bare metal. What the label says goes before it.',
  zincCoilNote:
    'Length by mass and gauge of the bare metal. Zinc makes it a few per cent shorter. What the label says goes before it.',
  pipe: ({ boreMm, lengthM }: { boreMm: number } & Roll, f: Figures) =>
    `Low-density pipe, ${f.number(boreMm)} mm bore, roll of ${f.number(lengthM)} m`,
  cable: ({ conductor, lengthM }: { conductor: Phrase } & Roll, f: Figures) =>
    `${f.say(conductor)}, roll of ${f.number(lengthM)} m`,
  earthCable: ({ lengthM }: Roll, f: Figures) => `Earth cable, roll of ${f.number(lengthM)} m`,
  gate: ({ widthM }: { widthM: number }, f: Figures) => `Gate leaf for an opening of ${f.number(widthM, 1)} m`,
  stake: ({ lengthM }: { lengthM: number }, f: Figures) => `Earth stake, coated steel, ${f.number(lengthM, 1)} m`,
  barbedWireNote: 'A reel of 500 m is assumed: makes differ. What the label says goes before it.',
  goods: {
    barbedWire: 'Barbed wire, reel of 500 m (assumed)',
    strainer: 'Strainer post, 2.4 m',
    gatePost: 'Gate post, 2.4 m',
    anglePost: 'Angle post, 2.4 m',
    stay: 'Stay with block',
    post: 'Fence post, 1.8 m',
    dropper: 'Dropper',
    insulator: 'Post insulators, bag of 100',
    strainInsulator: 'Strain insulators, bag of 25',
    joint: 'Joint clamps, bag of 20',
    tightener: 'Wire tighteners, box of 10',
    staple: 'Staples, box of 500',
    hinges: 'Hinges for one gate leaf',
    latch: 'Gate latch',
    dropBolt: 'Drop bolt for a double gateway',
    cableClamp: 'Cable clamps, bag of 10',
    earthClamp: 'Earth clamps, bag of 10',
    seal: 'Sealant, tube for 20 riser ends',
    lug: 'Cable lugs, bag of 25',
    switch: 'Cut-out switch',
    switchScrews: 'Screws for switches, bag of 50',
    energiser: 'Energiser, mains',
    surge: 'Surge protection set',
    stakeClamp: 'Stake clamps, bag of 5',
    earthLead: 'Earth lead, roll of 50 m',
    sign: 'Warning signs, packet of 10',
  },
  kits: {
    single: 'Hardware of a single gateway',
    double: 'Hardware of a double gateway',
    switch: 'Cut-out switch with its clamps',
  },
};
