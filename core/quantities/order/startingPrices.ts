import { conductorLibrary } from '../../electrical/conductors/conductorLibrary.ts';
import type { Material } from '../../electrical/conductors/materials.ts';
import { coilLengthM } from '../../electrical/conductors/wireMass.ts';
import type { CatalogueItem, Kit, LabourRate, LabourUnit } from '../../model/things.ts';
import { figures } from '../../words/figures.ts';
import { activeLanguage } from '../../words/language.ts';
import type { Language, Texts } from '../../words/message.ts';
import { activeLocale } from '../../words/numbers/locale.ts';

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

type Said = Texts['order']['starting'];

/** Coils by mass, as wire is sold; which masses: common practice, no source. */
export const coilKg: Readonly<Record<Material, number>> = { zincCoatedSteel: 25, aluminium: 10, copper: 10 };
const coilPrice: Readonly<Record<Material, number>> = { zincCoatedSteel: 150, aluminium: 320, copper: 320 };

function fenceWires(said: Said): Row[] {
  return conductorLibrary.flatMap(({ id, name, kind, core }): Row[] => {
    if (kind !== 'wire' || !core) return [];
    const massKg = coilKg[core.material];
    const lengthM = Math.round(coilLengthM(massKg, core.material, core.diameterMm));
    const note = core.material === 'zincCoatedSteel' ? said.zincCoilNote : said.coilNote;
    const item = said.coil({ conductor: name, massKg, lengthM });
    return [[`wire-${id}`, item, `wire:${id}`, 'm', lengthM, coilPrice[core.material], 3, note]];
  });
}

const rolls = [50, 100, 200] as const;

function pipes(said: Said): Row[] {
  return [15, 19, 25, 32].flatMap((boreMm) =>
    rolls.map((lengthM): Row => {
      const price = Math.round(lengthM * (0.4 + boreMm * 0.05));
      return [`pipe-${boreMm}-${lengthM}`, said.pipe({ boreMm, lengthM }), `pipe:${boreMm}`, 'm', lengthM, price];
    }),
  );
}

function cables(said: Said): Row[] {
  return conductorLibrary
    .filter(({ kind }) => kind === 'cable')
    .flatMap(({ id, name }) =>
      rolls.map((lengthM): Row => {
        const price = Math.round(lengthM * (id.includes('copper') ? 3.8 : 1.7));
        return [`${id}-${lengthM}`, said.cable({ conductor: name, lengthM }), `cable:${id}`, 'm', lengthM, price];
      }),
    );
}

function earthCables(said: Said): Row[] {
  return rolls.map((lengthM): Row => {
    const price = Math.round(lengthM * 1.4);
    return [`earth-cable-${lengthM}`, said.earthCable({ lengthM }), 'earthCable', 'm', lengthM, price];
  });
}

function gates(said: Said): Row[] {
  return [2.4, 3, 3.6, 4.2, 4.8].map((widthM): Row => {
    const price = Math.round(90 + 48 * widthM);
    return [`gate-${widthM}`, said.gate({ widthM }), `gate:${widthM.toFixed(2)}`, 'each', 1, price];
  });
}

function stakes(said: Said): Row[] {
  return [1.2, 1.5, 1.8, 2.4].map((lengthM): Row => {
    const price = Math.round(9 + 8 * lengthM);
    return [`stake-${lengthM}`, said.stake({ lengthM }), `stake:${lengthM}`, 'each', 1, price];
  });
}

function others({ goods, barbedWireNote }: Said): Row[] {
  return [
    ['barbed-wire', goods.barbedWire, 'barbedWire', 'm', 500, 145, 3, barbedWireNote],
    ['strainer', goods.strainer, 'strainer', 'each', 1, 38],
    ['gate-post', goods.gatePost, 'gatePost', 'each', 1, 42],
    ['angle-post', goods.anglePost, 'anglePost', 'each', 1, 29],
    ['stay', goods.stay, 'stay', 'each', 1, 19],
    ['post', goods.post, 'post', 'each', 1, 9.5, 2],
    ['dropper', goods.dropper, 'dropper', 'each', 1, 2.4, 2],
    ['insulator', goods.insulator, 'insulator', 'each', 100, 34, 2],
    ['strain-insulator', goods.strainInsulator, 'strainInsulator', 'each', 25, 41, 2],
    ['joint-clamp', goods.joint, 'joint', 'each', 20, 27],
    ['tightener', goods.tightener, 'tightener', 'each', 10, 38],
    ['staple', goods.staple, 'staple', 'each', 500, 24, 5],
    ['hinge-set', goods.hinges, null, 'each', 1, 24],
    ['latch', goods.latch, null, 'each', 1, 18],
    ['drop-bolt', goods.dropBolt, null, 'each', 1, 21],
    ['cable-clamp', goods.cableClamp, 'cableClamp', 'each', 10, 22],
    ['earth-clamp', goods.earthClamp, 'earthClamp', 'each', 10, 25],
    ['sealant', goods.seal, 'seal', 'each', 20, 14],
    ['lug', goods.lug, 'lug', 'each', 25, 16],
    ['switch', goods.switch, null, 'each', 1, 19],
    ['switch-screws', goods.switchScrews, null, 'each', 50, 11],
    ['energiser', goods.energiser, 'energiser', 'each', 1, 780],
    ['surge', goods.surge, 'surge', 'each', 1, 65],
    ['stake-clamp', goods.stakeClamp, 'stakeClamp', 'each', 5, 23],
    ['earth-lead', goods.earthLead, 'earthLead', 'm', 50, 78, 5],
    ['sign', goods.sign, 'sign', 'each', 10, 32],
  ];
}

let made: { readonly language: Language; readonly locale: string; readonly prices: StartingPrices } | undefined;

/** The list in the active language and with the user's own numbers; the same as long as those are. */
export function startingPrices(): StartingPrices {
  const language = activeLanguage();
  const locale = activeLocale();
  if (made?.language !== language || made.locale !== locale) {
    made = { language, locale, prices: saidWith(figures('metric', language).words.order.starting) };
  }
  return made.prices;
}

function saidWith(said: Said): StartingPrices {
  const rows = [fenceWires, others, gates, pipes, cables, earthCables, stakes].flatMap((each) => each(said));
  return {
    items: rows.map(item),
    kits: [
      kit('gateway-single', said.kits.single, 'gateway:single', [
        ['hinge-set', 1],
        ['latch', 1],
      ]),
      kit('gateway-double', said.kits.double, 'gateway:double', [
        ['hinge-set', 2],
        ['latch', 1],
        ['drop-bolt', 1],
      ]),
      kit('switch', said.kits.switch, 'switch', [
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
}

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
