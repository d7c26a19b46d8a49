import * as z from 'zod';
import { mostGridPlaces, mostWayPositions } from '../model/groundThings.ts';
import { isKind, kinds } from '../model/project.ts';
import type { Kind, ThingOf } from '../model/things.ts';
import { object } from './keptObject.ts';

/**
 * What each kind of thing must look like wherever it comes in from outside: a message of a window, a project file.
 * The bounds only keep out nonsense and endless data; whether a drawing is a good one is for `core/checks`.
 */

const most = {
  idLength: 200,
  nameLength: 200,
  noteLength: 20_000,
  vertices: 50_000,
  switches: 10_000,
  kitParts: 200,
  keptThings: 200_000,
  depths: 1000,
  ties: 100,
  buriedPoints: 10_000,
  tests: 10_000,
  huntReadings: 1000,
  controlPoints: 1000,
  latticeSide: 65,
};

const id = z.string().min(1).max(most.idLength);
const name = z.string().max(most.nameLength);
const note = z.string().max(most.noteLength);
const lonLat = z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)]);
const linePath = z.array(lonLat).min(2).max(most.vertices);
/** Metres, millimetres, volts, ohms, joules: finite, and never below nothing. */
const amount = z.number().min(0).max(1e9);
const positive = z.number().positive().max(1e9);
const count = z.int().min(0).max(10_000);
const status = z.enum(['planned', 'built']);
const lineEnd = z.enum(['start', 'end']);
const side = z.enum(['left', 'right']);
const growth = z.union([z.enum(['clean', 'light', 'heavy']), object({ leakageOhmKm: positive })]);
const isoDate = z.union([
  z.iso.date(),
  z.iso.datetime({ local: true, offset: true }),
  z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/),
]);

const switchPlace = z.discriminatedUnion('on', [
  object({ on: z.literal('gateway'), gatewayId: id, post: lineEnd }),
  object({ on: z.literal('lineEnd'), lineId: id, end: lineEnd }),
  object({ on: z.literal('line'), lineId: id, atM: amount }),
  object({ on: z.literal('leadOut'), leadOutId: id }),
]);

const property = object({
  kind: z.literal('property'),
  id: z.literal('property'),
  name,
  note,
  invented: z.boolean(),
  origin: lonLat,
  placed: z.boolean(),
  units: z.enum(['metric', 'imperial']),
  snapToleranceM: amount,
  divide: object({
    maxSectionM: positive,
    maxGateways: count.nullable(),
    costs: object({ gateway: amount, takeOff: amount, alongRun: amount }),
  }),
  power: object({ growth, stockMinimumV: amount, soilOhmM: positive }),
  crossings: object({
    bowShare: amount,
    depthM: amount,
    vehicleDepthM: amount,
    riserHeightM: amount,
    tailM: amount,
    allowanceM: amount,
    pipeBoreMm: amount,
    minBendRadiusM: amount,
    earthConnectionM: amount,
  }),
});

const fenceType = object({
  kind: z.literal('fenceType'),
  id,
  name,
  liveWires: count,
  earthWires: count,
  plainWires: count.exactOptional(),
  barbedWires: count,
  wireId: id,
  plainWireId: id.exactOptional(),
  postSpacingM: amount,
  note,
});

const fenceLine = object({
  kind: z.literal('fenceLine'),
  id,
  name,
  typeId: id,
  live: z.boolean(),
  path: linePath,
  growth: growth.nullable(),
  status,
  note,
});

const post = object({
  kind: z.literal('post'),
  id,
  name,
  at: lonLat,
  role: z.enum(['strainer', 'angle', 'other']),
  note,
});

const gateway = object({
  kind: z.literal('gateway'),
  id,
  name,
  lineId: id,
  atM: amount,
  widthM: amount,
  leaves: z.union([z.literal(1), z.literal(2)]),
  hungFrom: lineEnd,
  opens: side,
  vehicles: z.boolean(),
  status,
  note,
});

const crossing = object({
  kind: z.literal('crossing'),
  id,
  gatewayId: id,
  method: z.enum(['buried', 'overhead']),
  bowM: amount.nullable(),
  bowSide: side,
  depthM: amount,
  riserHeightM: amount,
  tailM: amount,
  allowanceM: amount,
  pipeBoreMm: amount,
  minBendRadiusM: amount,
  cableId: id,
  earth: z.boolean(),
  earthConnectionM: amount,
  sealed: z.boolean().nullable(),
  status,
  note,
});

const cutOutSwitch = object({
  kind: z.literal('switch'),
  id,
  name,
  place: switchPlace,
  normally: z.enum(['closed', 'open']),
  pinned: z.boolean(),
  status,
  note,
});

const switchRule = object({ kind: z.literal('switchRule'), id, rule: z.enum(['forced', 'forbidden']) });

const switchCandidate = object({
  kind: z.literal('switchCandidate'),
  id,
  lineId: id,
  atM: amount,
  cost: amount.nullable(),
});

const energiser = object({
  kind: z.literal('energiser'),
  id,
  name,
  at: lonLat,
  openCircuitV: amount,
  into500OhmV: amount,
  storedJ: amount.nullable(),
  outputJ: amount.nullable(),
  status,
  note,
});

const leadOut = object({
  kind: z.literal('leadOut'),
  id,
  name,
  energiserId: id,
  path: linePath,
  cableId: id,
  buried: z.boolean(),
  status,
  note,
});

const earthField = object({
  kind: z.literal('earthField'),
  id,
  energiserId: id,
  at: lonLat,
  rods: count,
  rodLengthM: amount,
  rodDiameterMm: amount,
  spacingM: amount,
  status,
  note,
});

const paddock = object({ kind: z.literal('paddock'), id, name, at: lonLat, note });

const service = object({
  kind: z.literal('service'),
  id,
  name,
  what: z.enum([
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
  ]),
  path: z.array(lonLat).min(1).max(most.vertices),
  voltageV: amount.nullable(),
  buried: z.boolean(),
  open: z.enum(['public', 'private']).nullable(),
  note,
});

const conductor = object({ kind: z.literal('conductor'), id, name, ohmPerKm: positive, note });

const yardstick = object({
  usualV: amount.nullable(),
  by: z.enum(['reading', 'estimate', 'stock', 'own']),
  readOn: isoDate.exactOptional(),
  lowBelowV: amount,
  goodFromV: amount,
});

const reading = object({
  kind: z.literal('reading'),
  id,
  at: lonLat,
  date: isoDate,
  voltageV: amount.nullable(),
  currentA: amount.nullable(),
  openSwitchIds: z.array(id).max(most.switches),
  place: note.exactOptional(),
  section: name.exactOptional(),
  meter: note.exactOptional(),
  weather: note.exactOptional(),
  by: note.exactOptional(),
  runId: id.exactOptional(),
  yardstick: yardstick.exactOptional(),
  note,
});

const measure = z.string().min(1).max(most.nameLength);
const percent = z.number().min(0).max(1000);
const price = amount.nullable();

const orderSettings = object({
  kind: z.literal('orderSettings'),
  id: z.literal('order'),
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/)
    .nullable(),
  taxPercent: percent,
  count: z.enum(['planned', 'all']),
  angleFromDeg: z.number().min(0).max(180),
  strainerFromDeg: z.number().min(0).max(180),
  maxStrainM: positive,
  tieOffM: amount,
  tightenerEveryM: positive,
  signEveryM: positive,
  cutLossM: amount,
  rollTrimM: amount,
});

const fenceMake = object({ kind: z.literal('fenceMake'), id, typeId: id, droppersPerBay: count });

const catalogueItem = object({
  kind: z.literal('catalogueItem'),
  id,
  name,
  measure: measure.nullable(),
  unit: z.enum(['each', 'm']),
  packSize: positive,
  price,
  taxPercent: percent.nullable(),
  wastePercent: percent,
  invented: z.boolean(),
  note,
});

const kit = object({
  kind: z.literal('kit'),
  id,
  name,
  measure,
  parts: z.array(object({ itemId: id, amount: positive })).max(most.kitParts),
});

const labourRate = object({
  kind: z.literal('labourRate'),
  id,
  per: z.enum(['fenceKm', 'strainer', 'gateway', 'crossing', 'trenchM', 'switch', 'stake', 'energiser']),
  rate: price,
  taxPercent: percent.nullable(),
  invented: z.boolean(),
});

const rollOnHand = object({
  kind: z.literal('rollOnHand'),
  id,
  measure,
  lengthM: positive,
  count,
  note,
});

const stage = object({ kind: z.literal('stage'), id, name, rank: z.number().min(-1e9).max(1e9), note });

const stageMark = object({ kind: z.literal('stageMark'), id, thingId: id, stageId: id });

const drawnThingSchema = z.discriminatedUnion('kind', [
  property,
  fenceType,
  fenceLine,
  post,
  gateway,
  crossing,
  cutOutSwitch,
  switchRule,
  switchCandidate,
  energiser,
  leadOut,
  earthField,
  paddock,
  service,
  conductor,
  reading,
]);

/** A thing of a kind that a newer version made: kept as it is where whole things are kept, and seen by nobody. */
const ofNewerKind = z.custom<never>((value) => {
  const { kind, id } = (value ?? {}) as { readonly kind?: unknown; readonly id?: unknown };
  return typeof kind === 'string' && !isKind(kind) && typeof id === 'string';
}, 'Neither a thing of a kind that is known nor one of a newer kind.');

const keptPlan = object({
  kind: z.literal('keptPlan'),
  id,
  name,
  date: isoDate,
  note,
  things: z.array(z.union([drawnThingSchema, ofNewerKind])).max(most.keptThings),
});

const buildable = [fenceLine, gateway, crossing, cutOutSwitch, energiser, leadOut, earthField] as const;

const builtMark = object({
  kind: z.literal('builtMark'),
  id,
  thingKind: z.enum(['fenceLine', 'gateway', 'crossing', 'switch', 'energiser', 'leadOut', 'earthField']),
  thingId: id,
  date: isoDate.nullable(),
  by: note,
  note,
  planned: object({
    thing: z.discriminatedUnion('kind', buildable),
    places: z.array(lonLat).max(most.vertices),
  }).nullable(),
});

const crossingRecord = object({
  kind: z.literal('crossingRecord'),
  id,
  crossingId: id,
  route: z.enum(['arc', 'points']),
  depths: z.array(object({ alongM: amount, depthM: amount })).max(most.depths),
  jointsUnderground: count.nullable(),
  jointsNote: note,
  risers: object({ start: note, end: note }),
  alsoInTrench: note,
  soil: note,
  recordedBy: note,
  recordedOn: isoDate.nullable(),
  note,
  opening: object({
    startPostAt: lonLat,
    endPostAt: lonLat,
    hungFrom: lineEnd,
    bowSide: side,
    bowM: amount,
  }).exactOptional(),
});

const tie = object({
  from: z.discriminatedUnion('on', [
    object({ on: z.literal('post'), postId: id }),
    object({ on: z.literal('gatePost'), gatewayId: id, post: lineEnd }),
  ]),
  postName: note,
  postAt: lonLat,
  distanceM: amount,
  seM: positive,
});

const offsetM = z.number().min(-1e6).max(1e6);

const buriedPoint = object({
  kind: z.literal('buriedPoint'),
  id,
  crossingId: id,
  role: z.enum(['startFoot', 'endFoot', 'bend', 'point']),
  name,
  rank: z.number().min(-1e9).max(1e9),
  ties: z.array(tie).max(most.ties),
  side: side.nullable(),
  offset: object({ alongM: offsetM, leftM: offsetM }).nullable(),
  gps: object({ lonLat, seM: positive }).nullable(),
  note,
});

const photo = object({
  kind: z.literal('photo'),
  id,
  of: object({ kind: z.enum(kinds), id }).nullable(),
  blobId: id,
  thumbId: id,
  widthPx: z.int().min(1).max(100_000),
  heightPx: z.int().min(1).max(100_000),
  takenAt: isoDate.nullable(),
  gps: lonLat.nullable(),
  fileName: note,
  caption: note,
});

const testRun = object({
  kind: z.literal('testRun'),
  id,
  name,
  date: isoDate,
  by: note,
  meter: note,
  weather: note,
  results: z
    .array(object({ section: name, outcome: z.enum(['passed', 'failed', 'leftOut']), note }))
    .max(most.switches),
  finished: z.boolean(),
  note,
});

const earthTest = object({
  kind: z.literal('earthTest'),
  id,
  earthFieldId: id,
  date: isoDate,
  earthV: amount,
  fenceV: amount.nullable(),
  by: note,
  meter: note,
  weather: note,
  load: note,
  note,
});

const inGround = object({
  kind: z.literal('inGround'),
  id,
  name,
  fate: z.enum(['inUse', 'dead', 'takenOut']),
  since: isoDate.nullable(),
  note,
  was: z.discriminatedUnion('what', [
    object({
      what: z.literal('crossing'),
      gateway,
      lineName: name,
      crossing,
      record: crossingRecord.required({ opening: true }),
      points: z.array(buriedPoint).max(most.buriedPoints),
      mark: builtMark.nullable(),
    }),
    object({ what: z.literal('leadOut'), leadOut, energiserName: name, mark: builtMark.nullable() }),
    object({
      what: z.literal('earthField'),
      earthField,
      energiserName: name,
      tests: z.array(earthTest).max(most.tests),
      mark: builtMark.nullable(),
    }),
  ]),
});

const recordSchemas = [builtMark, crossingRecord, buriedPoint, photo, testRun, earthTest, inGround] as const;

const handover = object({
  kind: z.literal('handover'),
  id,
  number: z.int().min(1).max(1_000_000),
  date: isoDate,
  by: note,
  to: note,
  note,
  things: z
    .array(z.union([z.discriminatedUnion('kind', [drawnThingSchema, ...recordSchemas]), ofNewerKind]))
    .max(most.keptThings),
});

const faultHunt = object({
  kind: z.literal('faultHunt'),
  id,
  name,
  startedAt: isoDate,
  by: note,
  energiserId: id,
  saves: z.enum(['tests', 'walking']),
  judgedBy: z.literal('usual').exactOptional(),
  lowBelowV: amount,
  goodFromV: amount,
  openedFirst: z.array(id).max(most.switches),
  readings: z
    .array(
      object({
        check: z.enum(['start', 'test', 'with', 'without']),
        switchId: id.nullable(),
        switchName: name,
        openIds: z.array(id).max(most.switches),
        voltageV: amount.nullable(),
        result: z.enum(['low', 'good']),
        yardstick: yardstick.exactOptional(),
        doubtful: z.boolean(),
        at: isoDate,
        setAside: z.boolean(),
      }),
    )
    .max(most.huntReadings),
  end: object({
    at: isoDate,
    outcome: z.enum(['found', 'givenUp']),
    section: name.nullable(),
    place: note,
    confirmed: z.boolean(),
    cause: note,
  }).nullable(),
  note,
});

const heightM = z.number().min(-1000).max(10_000);

const ground = object({
  kind: z.literal('ground'),
  id,
  name,
  fileName: name,
  heights: z.discriminatedUnion('as', [
    object({
      as: z.literal('along'),
      ways: z
        .array(object({ path: linePath, heightsM: z.array(heightM).max(most.vertices) }))
        .max(mostWayPositions / 2),
      byReceiver: z.boolean(),
    }),
    object({
      as: z.literal('grid'),
      northWest: lonLat,
      stepLonDeg: z.number().min(1e-9).max(10),
      stepLatDeg: z.number().min(1e-9).max(10),
      columns: z.int().min(2).max(mostGridPlaces),
      rows: z.int().min(2).max(mostGridPlaces),
      heightsDm: z.array(z.int().min(-10_000).max(100_000).nullable()).max(mostGridPlaces),
    }),
  ]),
  note,
});

const picturePlace = z.tuple([z.number().min(-1e7).max(1e7), z.number().min(-1e7).max(1e7)]);
const pixels = z.int().min(1).max(1_000_000);
const bearing = z.number().min(-1e6).max(1e6);
const zoom = z.int().min(0).max(30);

const byEye = object({ by: z.literal('eye'), at: lonLat, metresPerPixel: positive, upDeg: bearing });

const placement = z.discriminatedUnion('by', [
  byEye,
  object({
    by: z.literal('distance'),
    from: picturePlace,
    to: picturePlace,
    distanceM: positive,
    at: lonLat,
    bearingDeg: bearing,
  }),
  object({
    by: z.literal('points'),
    fit: z.enum(['similarity', 'affine']),
    points: z.array(object({ pixel: picturePlace, at: lonLat })).max(most.controlPoints),
    before: byEye,
  }),
  object({
    by: z.literal('coordinates'),
    system: name,
    columns: z.int().min(2).max(most.latticeSide),
    rows: z.int().min(2).max(most.latticeSide),
    at: z.array(lonLat).max(most.latticeSide ** 2),
  }).refine(({ columns, rows, at }) => at.length === columns * rows, 'A lattice has a place for each of its points.'),
]);

const underlay = object({
  kind: z.literal('underlay'),
  id,
  name,
  source: z.discriminatedUnion('from', [
    object({ from: z.literal('picture'), imageId: id, fileName: note, widthPx: pixels, heightPx: pixels }),
    object({
      from: z.literal('tileFile'),
      path: z.string().min(1).max(4096),
      fileName: note,
      minZoom: zoom,
      maxZoom: zoom,
      bounds: z.tuple([
        z.number().min(-180).max(180),
        z.number().min(-90).max(90),
        z.number().min(-180).max(180),
        z.number().min(-90).max(90),
      ]),
    }),
  ]),
  placement: placement.nullable(),
  opacity: z.number().min(0).max(1),
  rank: z.number().min(-1e9).max(1e9),
  shown: z.boolean(),
  note,
});

const coordinateSettings = object({
  kind: z.literal('coordinateSettings'),
  id: z.literal('coordinates'),
  system: name,
  own: object({ name, definition: z.string().max(2000) }).nullable(),
});

export const thingSchemas = {
  property,
  fenceType,
  fenceLine,
  post,
  gateway,
  crossing,
  switch: cutOutSwitch,
  switchRule,
  switchCandidate,
  energiser,
  leadOut,
  earthField,
  paddock,
  service,
  conductor,
  reading,
  orderSettings,
  fenceMake,
  catalogueItem,
  kit,
  labourRate,
  rollOnHand,
  stage,
  stageMark,
  keptPlan,
  builtMark,
  crossingRecord,
  buriedPoint,
  photo,
  testRun,
  earthTest,
  inGround,
  handover,
  faultHunt,
  ground,
  underlay,
  coordinateSettings,
} satisfies { readonly [K in Kind]: z.ZodType<ThingOf<K>> };

export const thingSchema = z.discriminatedUnion('kind', [
  drawnThingSchema,
  orderSettings,
  fenceMake,
  catalogueItem,
  kit,
  labourRate,
  rollOnHand,
  stage,
  stageMark,
  keptPlan,
  ...recordSchemas,
  handover,
  faultHunt,
  ground,
  underlay,
  coordinateSettings,
]);
