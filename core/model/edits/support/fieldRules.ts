import type { Kind, ThingOf } from '../../things.ts';

/** What is wrong with a value, as the end of "It must be ...", or null where it will do. */
export type Rule = (value: unknown) => string | null;

export type FieldsOf<K extends Kind> = Exclude<keyof ThingOf<K>, 'kind' | 'id'>;
type Rules = { readonly [K in Kind]: { readonly [F in FieldsOf<K>]-?: Rule } };

const longestText = 20_000;
const longestName = 200;

const rule =
  (holds: (value: unknown) => boolean, mustBe: string): Rule =>
  (value) =>
    holds(value) ? null : mustBe;

const isText = (value: unknown, longest: number): value is string =>
  typeof value === 'string' && value.length <= longest;

const text = rule((value) => isText(value, longestText), `text of at most ${longestText} characters`);
const name = rule(
  (value) => isText(value, longestName) && value.trim() !== '',
  `a name of 1 to ${longestName} characters`,
);
const reference = name;
const flag = rule((value) => typeof value === 'boolean', 'yes or no');
const status = oneOf('planned', 'built');
const hand = oneOf('left', 'right');

function oneOf(...values: readonly (string | number)[]): Rule {
  return rule((value) => values.includes(value as string), values.join(' or '));
}

function number(least: number, most: number, unit: string): Rule {
  const mustBe = `a number from ${least} to ${most}${unit && ` ${unit}`}`;
  return rule((value) => typeof value === 'number' && value >= least && value <= most, mustBe);
}

function above(least: number, most: number, unit: string): Rule {
  const mustBe = `a number above ${least} and at most ${most} ${unit}`;
  return rule((value) => typeof value === 'number' && value > least && value <= most, mustBe);
}

function whole(least: number, most: number): Rule {
  const mustBe = `a whole number from ${least} to ${most}`;
  return rule((value) => Number.isInteger(value) && (value as number) >= least && (value as number) <= most, mustBe);
}

function orNone(other: Rule): Rule {
  return (value) => {
    const wrong = value === null ? null : other(value);
    return wrong && `${wrong}, or nothing`;
  };
}

function fields(rules: Readonly<Record<string, Rule>>): Rule {
  return (value) => {
    if (typeof value !== 'object' || value === null) return 'a set of figures';
    for (const [field, check] of Object.entries(rules)) {
      const wrong = check((value as Record<string, unknown>)[field]);
      if (wrong) return `${wrong} (${inWords(field)})`;
    }
    return null;
  };
}

const isPlace = (value: unknown): boolean => {
  if (!Array.isArray(value) || value.length !== 2) return false;
  const [lon, lat] = value as unknown[];
  return isWithin(lon, 180) && isWithin(lat, 90);
};

const isWithin = (value: unknown, most: number): boolean =>
  typeof value === 'number' && Number.isFinite(value) && Math.abs(value) <= most;

const place = rule(isPlace, 'a longitude from -180 to 180 and a latitude from -90 to 90');

function path(least: number): Rule {
  const mustBe = `${least} or more places, each a longitude from -180 to 180 and a latitude from -90 to 90`;
  return rule((value) => Array.isArray(value) && value.length >= least && value.every(isPlace), mustBe);
}

const growthClass = oneOf('clean', 'light', 'heavy');
const growth: Rule = (value) =>
  typeof value === 'string'
    ? growthClass(value)
    : fields({ leakageOhmKm: above(0, 1e12, 'ohm km') })(value) && 'clean, light, heavy, or a leakage above 0 ohm km';

const date = rule(
  (value) => isText(value, 40) && /^\d{4}-\d{2}-\d{2}/.test(value) && !Number.isNaN(Date.parse(value)),
  'a date such as 2025-03-14',
);

const listOfIds = rule(
  (value) => Array.isArray(value) && value.every((id) => isText(id, longestName)),
  'a list of ids',
);

/** A field that need not be there. */
const optional = (other: Rule): Rule => {
  return Object.assign((value: unknown) => (value === undefined ? null : other(value)), { optional: true });
};

export function isOptional(check: Rule): boolean {
  return 'optional' in check;
}

function listOf(other: Rule, what: string): Rule {
  return rule((value) => Array.isArray(value) && value.every((one) => other(one) === null), `a list of ${what}`);
}

const buildable = oneOf('fenceLine', 'gateway', 'crossing', 'switch', 'energiser', 'leadOut', 'earthField');
const standardError = above(0, 10_000, 'm');
const tie = fields({
  from: rule((value) => typeof value === 'object' && value !== null, 'a post'),
  postName: text,
  postAt: place,
  distanceM: number(0, 1000, 'm'),
  seM: above(0, 10, 'm'),
});

const percent = number(0, 1000, '%');
const metresOfTrench = number(0, 10, 'm');

/** Which values each field of each kind may have. Bounds are far outside what a farm has: they catch slips, not choices. */
export const fieldRules: Rules = {
  property: {
    name,
    note: text,
    invented: flag,
    origin: place,
    placed: flag,
    units: oneOf('metric', 'imperial'),
    snapToleranceM: number(0.01, 5, 'm'),
    divide: fields({
      maxSectionM: above(0, 1e7, 'm'),
      maxGateways: orNone(whole(1, 100_000)),
      costs: fields({ gateway: number(0, 1e6, ''), takeOff: number(0, 1e6, ''), alongRun: number(0, 1e6, '') }),
    }),
    power: fields({ growth, stockMinimumV: number(0, 20_000, 'V'), soilOhmM: above(0, 1e6, 'ohm m') }),
    crossings: fields({
      bowShare: number(0, 1, ''),
      depthM: metresOfTrench,
      vehicleDepthM: metresOfTrench,
      riserHeightM: metresOfTrench,
      tailM: number(0, 100, 'm'),
      allowanceM: number(0, 100, 'm'),
      pipeBoreMm: above(0, 500, 'mm'),
      minBendRadiusM: number(0, 10, 'm'),
      earthConnectionM: metresOfTrench,
    }),
  },
  fenceType: {
    name,
    liveWires: whole(0, 30),
    earthWires: whole(0, 30),
    plainWires: optional(whole(0, 30)),
    barbedWires: whole(0, 30),
    wireId: reference,
    plainWireId: optional(reference),
    postSpacingM: above(0, 1000, 'm'),
    note: text,
  },
  fenceLine: { name, typeId: reference, live: flag, path: path(2), growth: orNone(growth), status, note: text },
  post: { name, at: place, role: oneOf('strainer', 'angle', 'other'), note: text },
  gateway: {
    name,
    lineId: reference,
    atM: number(0, 1e7, 'm'),
    widthM: above(0, 100, 'm'),
    leaves: oneOf(1, 2),
    hungFrom: oneOf('start', 'end'),
    opens: hand,
    vehicles: flag,
    status,
    note: text,
  },
  crossing: {
    gatewayId: reference,
    method: oneOf('buried', 'overhead'),
    bowM: orNone(number(0, 100, 'm')),
    bowSide: hand,
    depthM: metresOfTrench,
    riserHeightM: metresOfTrench,
    tailM: number(0, 100, 'm'),
    allowanceM: number(0, 100, 'm'),
    pipeBoreMm: above(0, 500, 'mm'),
    minBendRadiusM: number(0, 10, 'm'),
    cableId: reference,
    earth: flag,
    earthConnectionM: metresOfTrench,
    sealed: orNone(flag),
    status,
    note: text,
  },
  switch: {
    name,
    place: rule((value) => typeof value === 'object' && value !== null, 'a place for a switch'),
    normally: oneOf('closed', 'open'),
    pinned: flag,
    status,
    note: text,
  },
  switchRule: { rule: oneOf('forced', 'forbidden') },
  switchCandidate: { lineId: reference, atM: number(0, 1e7, 'm'), cost: orNone(number(0, 1e6, '')) },
  energiser: {
    name,
    at: place,
    openCircuitV: above(0, 50_000, 'V'),
    into500OhmV: above(0, 50_000, 'V'),
    storedJ: orNone(above(0, 10_000, 'J')),
    outputJ: orNone(above(0, 10_000, 'J')),
    status,
    note: text,
  },
  leadOut: { name, energiserId: reference, path: path(2), cableId: reference, buried: flag, status, note: text },
  earthField: {
    energiserId: reference,
    at: place,
    rods: whole(1, 1000),
    rodLengthM: above(0, 100, 'm'),
    rodDiameterMm: above(0, 500, 'mm'),
    spacingM: number(0, 1000, 'm'),
    status,
    note: text,
  },
  paddock: { name, at: place, note: text },
  service: {
    name,
    what: oneOf(
      'powerLine',
      'waterPipe',
      'gasPipe',
      'dataCable',
      'drain',
      'road',
      'path',
      'creek',
      'floodZone',
      'earthElectrode',
    ),
    path: path(1),
    voltageV: orNone(above(0, 2_000_000, 'V')),
    buried: flag,
    open: orNone(oneOf('public', 'private')),
    note: text,
  },
  conductor: { name, ohmPerKm: above(0, 1e6, 'ohm/km'), note: text },
  reading: {
    at: place,
    date,
    voltageV: orNone(number(0, 50_000, 'V')),
    currentA: orNone(number(0, 1000, 'A')),
    openSwitchIds: listOfIds,
    place: optional(text),
    section: optional(text),
    meter: optional(text),
    weather: optional(text),
    by: optional(text),
    runId: optional(reference),
    yardstick: optional(rule((value) => typeof value === 'object' && value !== null, 'what it was judged by')),
    note: text,
  },
  orderSettings: {
    currency: orNone(rule((value) => isText(value, 3) && /^[A-Z]{3}$/.test(value), 'three letters such as EUR')),
    taxPercent: percent,
    count: oneOf('planned', 'all'),
    angleFromDeg: number(0, 180, 'degrees'),
    strainerFromDeg: number(0, 180, 'degrees'),
    maxStrainM: above(0, 1e6, 'm'),
    tieOffM: number(0, 100, 'm'),
    tightenerEveryM: above(0, 1e6, 'm'),
    signEveryM: above(0, 1e6, 'm'),
    cutLossM: number(0, 10, 'm'),
    rollTrimM: number(0, 10, 'm'),
  },
  fenceMake: { typeId: reference, droppersPerBay: whole(0, 100) },
  catalogueItem: {
    name,
    measure: orNone(reference),
    unit: oneOf('each', 'm'),
    packSize: above(0, 1e6, ''),
    price: orNone(number(0, 1e9, '')),
    taxPercent: orNone(percent),
    wastePercent: percent,
    invented: flag,
    note: text,
  },
  kit: {
    name,
    measure: reference,
    parts: rule(
      (value) =>
        Array.isArray(value) &&
        value.every(({ itemId, amount }) => isText(itemId, longestName) && amount > 0 && amount <= 1e6),
      'a list of items, each with an amount above 0',
    ),
  },
  labourRate: {
    per: oneOf('fenceKm', 'strainer', 'gateway', 'crossing', 'trenchM', 'switch', 'stake', 'energiser'),
    rate: orNone(number(0, 1e9, '')),
    taxPercent: orNone(percent),
    invented: flag,
  },
  rollOnHand: { measure: reference, lengthM: above(0, 1e5, 'm'), count: whole(1, 1000), note: text },
  stage: { name, rank: number(-1e9, 1e9, ''), note: text },
  stageMark: { thingId: reference, stageId: reference },
  keptPlan: { name, date, note: text, things: rule(Array.isArray, 'a drawing') },
  builtMark: {
    thingKind: buildable,
    thingId: reference,
    date: orNone(date),
    by: text,
    note: text,
    planned: rule((value) => typeof value === 'object', 'what was planned'),
  },
  crossingRecord: {
    crossingId: reference,
    route: oneOf('arc', 'points'),
    depths: listOf(
      fields({ alongM: number(0, 1000, 'm'), depthM: metresOfTrench }),
      'depths from 0 to 10 m, each at 0 m or more along the trench',
    ),
    jointsUnderground: orNone(whole(0, 100)),
    jointsNote: text,
    risers: fields({ start: text, end: text }),
    alsoInTrench: text,
    soil: text,
    recordedBy: text,
    recordedOn: orNone(date),
    note: text,
    opening: optional(
      fields({
        startPostAt: place,
        endPostAt: place,
        hungFrom: oneOf('start', 'end'),
        bowSide: hand,
        bowM: number(0, 1000, 'm'),
      }),
    ),
  },
  buriedPoint: {
    crossingId: reference,
    role: oneOf('startFoot', 'endFoot', 'bend', 'point'),
    name: text,
    rank: number(-1e9, 1e9, ''),
    ties: listOf(tie, 'ties, each a distance from 0 to 1000 m with a tape error above 0 m'),
    side: orNone(hand),
    offset: orNone(fields({ alongM: number(-1000, 1000, 'm'), leftM: number(-1000, 1000, 'm') })),
    gps: orNone(fields({ lonLat: place, seM: standardError })),
    note: text,
  },
  photo: {
    of: orNone(rule((value) => typeof value === 'object' && value !== null, 'what it shows')),
    blobId: reference,
    thumbId: reference,
    widthPx: whole(1, 100_000),
    heightPx: whole(1, 100_000),
    takenAt: orNone(date),
    gps: orNone(place),
    fileName: text,
    caption: text,
  },
  testRun: {
    name,
    date,
    by: text,
    meter: text,
    weather: text,
    results: listOf(
      fields({ section: name, outcome: oneOf('passed', 'failed', 'leftOut'), note: text }),
      'sections, each passed, failed or left out',
    ),
    finished: flag,
    note: text,
  },
  earthTest: {
    earthFieldId: reference,
    date,
    earthV: number(0, 50_000, 'V'),
    fenceV: orNone(number(0, 50_000, 'V')),
    by: text,
    meter: text,
    weather: text,
    load: text,
    note: text,
  },
  inGround: {
    name,
    fate: oneOf('inUse', 'dead', 'takenOut'),
    since: orNone(date),
    note: text,
    was: rule((value) => typeof value === 'object' && value !== null, 'what was buried'),
  },
  handover: {
    number: whole(1, 1_000_000),
    date,
    by: text,
    to: text,
    note: text,
    things: rule(Array.isArray, 'the property as it stood'),
  },
  faultHunt: {
    name,
    startedAt: date,
    by: text,
    energiserId: reference,
    saves: oneOf('tests', 'walking'),
    judgedBy: optional(oneOf('usual')),
    lowBelowV: number(0, 50_000, 'V'),
    goodFromV: number(0, 50_000, 'V'),
    openedFirst: listOfIds,
    readings: rule(Array.isArray, 'a list of readings'),
    end: rule((value) => typeof value === 'object', 'how it ended, or nothing'),
    note: text,
  },
  ground: {
    name,
    fileName: text,
    heights: rule((value) => typeof value === 'object' && value !== null, 'heights along a way or on a grid'),
    note: text,
  },
  underlay: {
    name,
    source: rule((value) => typeof value === 'object' && value !== null, 'a picture or a tile file'),
    placement: orNone(rule((value) => typeof value === 'object', 'a placement')),
    opacity: number(0, 1, ''),
    rank: number(-1e9, 1e9, ''),
    shown: flag,
    note: text,
  },
  coordinateSettings: {
    system: name,
    own: orNone(fields({ name, definition: text })),
  },
};

/** A field's name as people read it: "widthM" is "width". */
export function inWords(field: string): string {
  const words = field.replace(/(M|Mm|V|J|OhmKm|OhmM)$/, '').replace(/([a-z0-9])([A-Z])/g, '$1 $2');
  return words.toLowerCase();
}
