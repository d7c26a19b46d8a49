import { conductorLibrary } from '../../electrical/conductors/conductorLibrary.ts';
import type { Material } from '../../electrical/conductors/materials.ts';
import { coilLengthM } from '../../electrical/conductors/wireMass.ts';
import type { CatalogueItem, Kit, LabourRate, LabourUnit } from '../../model/things.ts';
import { figures } from '../../words/figures.ts';
import { fixed } from '../../words/numbers/write.ts';

/**
 * What a property's price list begins with: plain goods of no make, with prices that are invented and say so, in no
 * currency. They show how the list works until a supplier's own prices stand in it.
 */
export interface StartingPrices {
  readonly items: readonly CatalogueItem[];
  readonly kits: readonly Kit[];
  readonly labour: readonly LabourRate[];
}

type Row = readonly [
  id: string,
  name: string,
  measure: string | null,
  unit: 'each' | 'm',
  pack: number,
  price: number,
  wastePercent?: number,
  note?: string,
];

/** Coils by mass, as wire is sold; which masses: common practice, no source. */
export const coilKg: Readonly<Record<Material, number>> = { zincCoatedSteel: 25, aluminium: 10, copper: 10 };
const coilPrice: Readonly<Record<Material, number>> = { zincCoatedSteel: 150, aluminium: 320, copper: 320 };

const fenceWires: readonly Row[] = conductorLibrary.flatMap(({ id, name, kind, core }): Row[] => {
  if (kind !== 'wire' || !core) return [];
  const massKg = coilKg[core.material];
  const lengthM = Math.round(coilLengthM(massKg, core.material, core.diameterMm));
  const zinc = core.material === 'zincCoatedSteel' ? ' Zinc makes it a few per cent shorter.' : '';
  const note = `Length by mass and gauge of the bare metal.${zinc} What the label says goes before it.`;
  const item = `${figures('metric').say(name)}, coil of ${massKg} kg, about ${fixed(lengthM, 0)} m`;
  return [[`wire-${id}`, item, `wire:${id}`, 'm', lengthM, coilPrice[core.material], 3, note]];
});

const rolls = [50, 100, 200] as const;

const pipes: readonly Row[] = [15, 19, 25, 32].flatMap((bore) =>
  rolls.map((lengthM): Row => {
    const price = Math.round(lengthM * (0.4 + bore * 0.05));
    return [
      `pipe-${bore}-${lengthM}`,
      `Low-density pipe, ${bore} mm bore, roll of ${lengthM} m`,
      `pipe:${bore}`,
      'm',
      lengthM,
      price,
    ];
  }),
);

const cables: readonly Row[] = conductorLibrary
  .filter(({ kind }) => kind === 'cable')
  .flatMap(({ id, name }) =>
    rolls.map((lengthM): Row => {
      const price = Math.round(lengthM * (id.includes('copper') ? 3.8 : 1.7));
      return [
        `${id}-${lengthM}`,
        `${figures('metric').say(name)}, roll of ${lengthM} m`,
        `cable:${id}`,
        'm',
        lengthM,
        price,
      ];
    }),
  );

const earthCables: readonly Row[] = rolls.map((lengthM) => [
  `earth-cable-${lengthM}`,
  `Earth cable, roll of ${lengthM} m`,
  'earthCable',
  'm',
  lengthM,
  Math.round(lengthM * 1.4),
]);

const gates: readonly Row[] = [2.4, 3, 3.6, 4.2, 4.8].map((widthM) => [
  `gate-${widthM}`,
  `Gate leaf for an opening of ${widthM.toFixed(1)} m`,
  `gate:${widthM.toFixed(2)}`,
  'each',
  1,
  Math.round(90 + 48 * widthM),
]);

const stakes: readonly Row[] = [1.2, 1.5, 1.8, 2.4].map((lengthM) => [
  `stake-${lengthM}`,
  `Earth stake, coated steel, ${lengthM.toFixed(1)} m`,
  `stake:${lengthM}`,
  'each',
  1,
  Math.round(9 + 8 * lengthM),
]);

const others: readonly Row[] = [
  [
    'barbed-wire',
    'Barbed wire, reel of 500 m (assumed)',
    'barbedWire',
    'm',
    500,
    145,
    3,
    'A reel of 500 m is assumed: makes differ. What the label says goes before it.',
  ],
  ['strainer', 'Strainer post, 2.4 m', 'strainer', 'each', 1, 38],
  ['gate-post', 'Gate post, 2.4 m', 'gatePost', 'each', 1, 42],
  ['angle-post', 'Angle post, 2.4 m', 'anglePost', 'each', 1, 29],
  ['stay', 'Stay with block', 'stay', 'each', 1, 19],
  ['post', 'Fence post, 1.8 m', 'post', 'each', 1, 9.5, 2],
  ['dropper', 'Dropper', 'dropper', 'each', 1, 2.4, 2],
  ['insulator', 'Post insulators, bag of 100', 'insulator', 'each', 100, 34, 2],
  ['strain-insulator', 'Strain insulators, bag of 25', 'strainInsulator', 'each', 25, 41, 2],
  ['joint-clamp', 'Joint clamps, bag of 20', 'joint', 'each', 20, 27],
  ['tightener', 'Wire tighteners, box of 10', 'tightener', 'each', 10, 38],
  ['staple', 'Staples, box of 500', 'staple', 'each', 500, 24, 5],
  ['hinge-set', 'Hinges for one gate leaf', null, 'each', 1, 24],
  ['latch', 'Gate latch', null, 'each', 1, 18],
  ['drop-bolt', 'Drop bolt for a double gateway', null, 'each', 1, 21],
  ['cable-clamp', 'Cable clamps, bag of 10', 'cableClamp', 'each', 10, 22],
  ['earth-clamp', 'Earth clamps, bag of 10', 'earthClamp', 'each', 10, 25],
  ['sealant', 'Sealant, tube for 20 riser ends', 'seal', 'each', 20, 14],
  ['lug', 'Cable lugs, bag of 25', 'lug', 'each', 25, 16],
  ['switch', 'Cut-out switch', null, 'each', 1, 19],
  ['switch-screws', 'Screws for switches, bag of 50', null, 'each', 50, 11],
  ['energiser', 'Energiser, mains', 'energiser', 'each', 1, 780],
  ['surge', 'Surge protection set', 'surge', 'each', 1, 65],
  ['stake-clamp', 'Stake clamps, bag of 5', 'stakeClamp', 'each', 5, 23],
  ['earth-lead', 'Earth lead, roll of 50 m', 'earthLead', 'm', 50, 78, 5],
  ['sign', 'Warning signs, packet of 10', 'sign', 'each', 10, 32],
];

export const startingPrices: StartingPrices = {
  items: [...fenceWires, ...others, ...gates, ...pipes, ...cables, ...earthCables, ...stakes].map(item),
  kits: [
    kit('gateway-single', 'Hardware of a single gateway', 'gateway:single', [
      ['hinge-set', 1],
      ['latch', 1],
    ]),
    kit('gateway-double', 'Hardware of a double gateway', 'gateway:double', [
      ['hinge-set', 2],
      ['latch', 1],
      ['drop-bolt', 1],
    ]),
    kit('switch', 'Cut-out switch with its clamps', 'switch', [
      ['switch', 1],
      ['cable-clamp', 2],
      ['switch-screws', 2],
    ]),
  ],
  labour: [
    labour('fenceKm', 4200),
    labour('strainer', 65),
    labour('gateway', 110),
    labour('crossing', 140),
    labour('trenchM', 9),
    labour('switch', 18),
    labour('stake', 22),
    labour('energiser', 160),
  ],
};

function item([id, name, measure, unit, packSize, price, wastePercent = 0, note = '']: Row): CatalogueItem {
  return {
    kind: 'catalogueItem',
    id: `item-${id}`,
    name,
    measure,
    unit,
    packSize,
    price,
    taxPercent: null,
    wastePercent,
    invented: true,
    note,
  };
}

function kit(id: string, name: string, measure: string, parts: readonly (readonly [string, number])[]): Kit {
  return {
    kind: 'kit',
    id: `kit-${id}`,
    name,
    measure,
    parts: parts.map(([itemId, amount]) => ({ itemId: `item-${itemId}`, amount })),
  };
}

function labour(per: LabourUnit, rate: number): LabourRate {
  return { kind: 'labourRate', id: `labour:${per}`, per, rate, taxPercent: null, invented: true };
}
