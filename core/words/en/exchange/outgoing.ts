import type { Figures } from '../../types.ts';

const noGateway = 'no gateway';

/** What things are called in the files of other programs, and what is said of them there. */
export const outgoing = {
  crossing: ({ gateway }: { gateway: string | null }) => `Crossing at ${gateway ?? noGateway}`,
  plannedCrossing: ({ gateway }: { gateway: string | null }) =>
    `Planned crossing at ${gateway ?? noGateway}, not in the ground`,
  plannedLeadOut: ({ name }: { name: string }) => `${name} (planned, not in the ground)`,
  left: ({ name, state }: { name: string; state: string }) => `${name} (${state})`,
  points: { startFoot: 'Riser foot', endFoot: 'Riser foot', bend: 'Bend', point: 'Point' },
  pointOf: ({ point, gateway, open }: { point: string; gateway: string | null; open: string }) =>
    `${point} of crossing at ${gateway ?? noGateway}${open === '' ? '' : ` (${open})`}`,
  earthOf: ({ energiser }: { energiser: string | null }) => `Earth of ${energiser ?? 'no energiser'}`,
  reading: ({ date }: { date: string }) => `Reading ${date}`,
  section: ({ letter }: { letter: string }) => `Section ${letter}`,
  paddock: 'Paddock without a name',
  /** What a depth is of. */
  depth: {
    planned: 'of the trench as planned, not measured',
    measured: 'measured to the top of the pipe',
    measuredOnce: 'measured to the top of the pipe, at one place',
  },
  folders: {
    gateways: 'Gateways',
    crossings: 'Crossings in the ground and overhead',
    left: 'In the ground, no longer drawn',
    points: 'Points of crossings as recorded',
    switches: 'Cut-out switches',
    fenceLines: 'Fence lines',
    supply: 'Energisers, lead-outs and earth',
    posts: 'Posts',
    services: 'Services and hazards',
    planned: 'Planned cables, not in the ground',
    takenOut: 'Taken out of the ground',
    paddocks: 'Paddocks',
    sections: 'Sections',
    readings: 'Readings',
    data: 'For Undergate only',
  },
  about: ({ invented }: { invented: boolean }) =>
    `${invented ? 'An invented example. No such property exists. ' : ''}Drawn for planning. Places are as good as what was drawn or measured. Turn the energiser off and prove the fence dead before work; have other buried services located before digging.`,
  /** What the figures of a drawing in metres are. */
  metres: {
    local: ({ name }: { name: string }) => `${name}: metres east and north of the middle of the property`,
    blankGrid: ({ name }: { name: string }) => `${name}: metres on the blank grid`,
    grid: ({ name, system }: { name: string; system: string }) => `${name}: metres of ${system}`,
  },
  deep: ({ name, range, is, place }: { name: string; range: string; is: string; place: string }) =>
    `${name}: depth ${range} ${is}; place ${place}`,
};

/** The registers as tables of other programs. */
export const tables = {
  titles: {
    fenceLines: 'Fence lines',
    gateways: 'Gateways',
    crossings: 'Under-gate crossings',
    left: 'No longer drawn',
    switches: 'Cut-out switches',
    sections: 'Sections',
    paddocks: 'Paddocks',
    posts: 'Posts',
    energisers: 'Energisers',
    leadOuts: 'Lead-outs',
    earthFields: 'Earth fields',
    services: 'Services and hazards',
    readings: 'Readings',
  },
  fed: {
    oneSide: 'from one side',
    bothSides: 'from both sides',
    nowhere: 'not fed',
    notInFence: 'in no live fence',
  },
};

/** The order, the quantities and the cut lists as tables. */
export const orderTables = {
  stage: 'stage',
  sort: 'sort',
  item: 'item',
  needed: 'needed',
  unit: 'unit',
  packs: 'packs',
  packSize: 'pack size',
  price: ({ currency }: { currency: string | null }) => `price (${money(currency)})`,
  net: ({ currency }: { currency: string | null }) => `net (${money(currency)})`,
  taxPercent: 'tax %',
  tax: ({ currency }: { currency: string | null }) => `tax (${money(currency)})`,
  for: 'for',
  caution: 'caution',
  goods: 'goods',
  labour: 'labour',
  quantity: 'quantity',
  together: 'together',
  piece: 'piece',
  amount: 'amount',
  of: 'of',
  roll: 'roll',
  from: 'from',
  rollLengthM: 'roll length m',
  label: 'label',
  cutToM: 'cut to m',
  bought: 'bought',
  noRoll: 'no roll',
};

function money(currency: string | null): string {
  return currency ?? 'money';
}

/** Why a row of a price list is left out. */
export const priceList = {
  unknownRow: ({ sort }: { sort: string }) => `"${sort}" is not a sort of row: it is item, labour or kit.`,
  idTwice: ({ id }: { id: string }) => `The id "${id}" stands in an earlier row already.`,
  unknownWork: ({ per, units }: { per: string; units: readonly string[] }) =>
    `Labour is not paid by "${per}": it is one of ${units.join(', ')}.`,
  noPart: 'A row of a kit names the id of its item in the column "part".',
  longId: ({ most }: { most: number }, f: Figures) => `An id has at most ${f.number(most)} letters.`,
};
