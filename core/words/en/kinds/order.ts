import { name, named, note } from './field.ts';

/** The fields of what the order is worked out with. */
export const order = {
  orderSettings: {
    currency: { ...named('currency'), hint: 'Its three letters: EUR, NZD, USD.' },
    taxPercent: { called: 'tax percent', label: 'Tax', hint: 'On goods and work that name none of their own.' },
    count: {
      called: 'count',
      label: 'Things',
      choices: { planned: 'Planned: what stands already is left out', all: 'All, as if nothing stood yet' },
    },
    angleFromDeg: named('bend for an angle post'),
    strainerFromDeg: named('bend for a strainer'),
    maxStrainM: { called: 'max strain', label: 'Longest strain of wire' },
    tieOffM: { called: 'tie off', label: 'Wire for each tie-off' },
    tightenerEveryM: { called: 'tightener every', label: 'A tightener for each' },
    signEveryM: { called: 'sign every', label: 'Warning signs every' },
    cutLossM: { called: 'cut loss', label: 'Lost at each cut' },
    rollTrimM: { called: 'roll trim', label: 'Trimmed off each roll' },
  },
  fenceMake: { typeId: named('type'), droppersPerBay: named('droppers per bay') },
  catalogueItem: {
    name,
    measure: named('measure'),
    unit: { ...named('unit'), choices: { each: 'Pieces', m: 'Metres' } },
    packSize: named('pack size'),
    price: named('price'),
    taxPercent: named('tax percent'),
    wastePercent: named('waste percent'),
    invented: named('invented'),
    note,
  },
  kit: { name, measure: named('measure'), parts: named('parts') },
  labourRate: {
    per: {
      ...named('per'),
      choices: {
        fenceKm: 'Kilometre of fence',
        strainer: 'Strainer',
        gateway: 'Gateway',
        crossing: 'Crossing',
        trenchM: 'Metre of trench',
        switch: 'Cut-out switch',
        stake: 'Earth stake',
        energiser: 'Energiser',
      },
    },
    rate: named('rate'),
    taxPercent: named('tax percent'),
    invented: named('invented'),
  },
  rollOnHand: { measure: named('measure'), lengthM: named('length'), count: named('count'), note },
  stage: { name, rank: named('rank'), note },
  stageMark: { thingId: named('thing'), stageId: named('stage') },
};
