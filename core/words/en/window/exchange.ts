import type { Figures, Phrase } from '../../types.ts';
import { coordinates } from './exchange/coordinates.ts';

const pieces = (count: number, f: Figures) =>
  `${f.number(count)} ${f.plural(count, { one: 'piece', other: 'pieces' })}`;

/** What a button does that takes a map in from a file. */
const importing = {
  title: ({ file }: { file: string }) => `Import ${file}`,
  aMap: 'Import a map',
  formats:
    'GeoJSON, KML, KMZ, GPX, a zipped Shapefile, or a table of points (CSV). You see what each piece becomes before anything is changed.',
  tooLarge: ({ file, megabytes }: { file: string; megabytes: number }, f: Figures) =>
    `${file} is larger than ${f.number(megabytes)} MB.`,
  reading: 'Reading the file …',
  readSoFar: 'Read so far',
  stop: 'Stop',
  stopped: 'Stopped. Nothing was changed.',
  isSwapped: 'Latitude and longitude are taken the other way round than the file has them.',
  asTheyStand: 'Take them as they stand',
  swap: 'Swap latitude and longitude',
  usable: ({ count, problems }: { count: number; problems: number }, f: Figures) =>
    `${f.number(count)} usable ${f.plural(count, { one: 'piece', other: 'pieces' })}${problems > 0 ? `, ${f.number(problems)} that can’t be used` : ''}.`,
  sketch: 'Sketch of the file',
  /** Which of several places is the property. */
  propertyIs: 'The property is',
  selectPlace: 'Select a place',
  place: (
    { place, pieces: count, lines, awayM }: { place: string; pieces: number; lines: number; awayM: number | null },
    f: Figures,
  ) =>
    `around ${place}${awayM === null ? '' : `, ${f.length(awayM)} away`}: ${pieces(count, f)}, ${f.number(lines)} of them lines`,
  places: ({ places }: { places: number }, f: Figures) =>
    `The file holds ${f.number(places)} places that lie far from one another. What lies at the others is left out, unless you select otherwise for it.`,
  strays: 'Far from the rest',
  straysOut: ({ count }: { count: number }, f: Figures) =>
    count === 1
      ? 'One piece lies far from the rest and is left out, unless you select otherwise here.'
      : `${f.number(count)} pieces lie far from the rest and are left out, unless you select otherwise here.`,
  stray: ({ why }: { why: Phrase }, f: Figures) => `: ${f.say(why)}.`,
  fenceType: 'Fences are of type',
  status: 'They are',
  built: 'Built: really there',
  planned: 'Planned',
  simplify: 'Simplify lines to within',
  joinEnds: 'Join ends closer than',
  joinEndsHint: 'Ends of new fences go to a post, end or fence that near; 0 leaves them.',
  keepHeights: 'Keep the heights, for lengths over the ground',
  counting: 'Counting the points …',
  notCounted: 'The points could not be counted.',
  simplified: ({ before, after }: { before: number; after: number }, f: Figures) =>
    `${f.number(before)} points become ${f.number(after)}.`,
  allPoints: ({ points }: { points: number }, f: Figures) => `${f.number(points)} points; 0 keeps them all.`,
  table: 'What each piece becomes',
  piece: 'Piece',
  shape: 'Shape',
  becomes: 'Becomes',
  /** Of one piece, for who hears the page. */
  pieceBecomes: ({ name }: { name: string }) => `${name} becomes`,
  asItWas: 'what it was in Undergate',
  showMore: ({ left }: { left: number }, f: Figures) => `Show more (${f.number(left)} left)`,
  all: {
    line: ({ count }: { count: number }, f: Figures) => `All ${f.number(count)} lines`,
    outline: ({ count }: { count: number }, f: Figures) => `All ${f.number(count)} outlines`,
    point: ({ count }: { count: number }, f: Figures) => `All ${f.number(count)} points`,
  },
  allBecome: {
    line: 'All lines become',
    outline: 'All outlines become',
    point: 'All points become',
  },
  eachBelow: 'as each is below',
  shapes: { line: 'line', outline: 'outline', point: 'point', none: 'no place' },
  line: ({ points }: { points: number }, f: Figures) => `line, ${f.number(points)} points`,
  outline: ({ points }: { points: number }, f: Figures) => `outline, ${f.number(points)} points`,
  /** What a piece can become. */
  as: {
    fenceLine: 'fence line, live',
    boundary: 'boundary fence, not live',
    gateway: 'gateway',
    post: 'post',
    energiser: 'energiser',
    powerLine: 'power line',
    waterPipe: 'water pipe',
    gasPipe: 'gas pipe',
    dataCable: 'data cable',
    drain: 'drain',
    road: 'road',
    path: 'path',
    creek: 'creek',
    floodZone: 'flood-prone ground',
    earthElectrode: 'earth electrode',
    heights: 'heights of the ground only',
    leaveOut: 'leave out',
  },
  problems: ({ count }: { count: number }, f: Figures) => `What can’t be used (${f.number(count)})`,
  /** After the name of the piece. */
  problem: ({ number, why, whatToDo }: { number: number; why: Phrase; whatToDo: Phrase }, f: Figures) =>
    `(number ${number} in the file): ${f.say(why)}. ${f.say(whatToDo)}`,
  importing: 'Importing …',
  importPieces: ({ count }: { count: number }, f: Figures) => `Import ${pieces(count, f)}`,
  leaveOut: 'Leave out',
  oneStep: 'One step of undo takes it all back.',
  closed: 'The property was closed meanwhile.',
  failed: ({ fault }: { fault: string }) =>
    `This program failed at it (${fault}). Close the property and open it again to see what is in it.`,
  notSaved: 'It could not be saved.',
  nothingImported: 'Nothing was imported.',
  nothingChanged: 'Nothing was changed: all of it is in the property already, or was left out.',
  noneImported: 'Nothing was imported. See why of each:',
  butForThese: 'Imported, but for these:',
  imported: 'Imported.',
  done: 'Done',
};

/** The ways in which the work leaves the app. */
const exporting = {
  maps: 'A map for other programs',
  mapsHint:
    'All that is drawn and recorded, without photos and prices. Imported again, each thing comes back as what it was.',
  geoJson: 'Export GeoJSON',
  kml: 'Export KML',
  kmz: 'Export KMZ',
  handheld: 'For a handheld',
  handheldHint:
    'Gateways, switches and posts as waypoints, fences and crossings as tracks. They come back as what they were.',
  gpx: 'Export GPX',
  surveyor: 'For a surveyor',
  surveyorHint: 'Every register as a layer, or the drawing in metres. To read only: these do not come back.',
  geoPackage: 'Export GeoPackage',
  dxf: 'Export DXF',
  tables: 'Tables and a picture',
  tablesHint: 'Every register as a table (CSV), packed into one file; the drawing without the maps underneath.',
  registers: 'Export the registers',
  png: 'Export a picture (PNG)',
  blankGrid:
    'This property is drawn on the blank grid. Formats of longitude and latitude wait until it is georeferenced.',
  creating: 'Creating it …',
};

/** Heights of the ground. */
const heights = {
  why: 'With heights, wire is ordered by its length over the ground. They come with GPX tracks, or from an elevation model (GeoTIFF).',
  noneOnFences: 'No fence line lies where heights are known.',
  overGround: (
    { planM, overM, known, lines }: { planM: number; overM: number; known: number; lines: number },
    f: Figures,
  ) =>
    `${f.length(planM)} of fence on the plan is ${f.length(overM)} over the ground${known < lines ? `, for the ${f.number(known)} of ${f.number(lines)} lines whose heights are known` : ''}.`,
  georeferenceFirst: 'The property must be georeferenced first.',
  held: ({ name, count, range }: { name: string; count: number; range: string }, f: Figures) =>
    `${name}: ${f.number(count)} heights${range === '' ? '' : `, ${range}`}`,
  range: ({ lowest, highest }: { lowest: string; highest: string }) => `${lowest} to ${highest}`,
  takeOut: 'Take out',
  takeOutNamed: ({ name }: { name: string }) => `Take out ${name}`,
  bringIn: 'Bring in an elevation model',
  bringInFile: ({ file }: { file: string }) => `Bring in ${file}`,
  reading: 'Reading the heights …',
  model: 'Elevation model',
  stopped: 'Stopped. Nothing was changed.',
  leftOut: 'Left out. Nothing was changed.',
  nothingChanged: ({ why }: { why: Phrase }, f: Figures) => `${f.say(why)} Nothing was changed.`,
  leaveModelOut: 'Not known: leave the model out',
  found: 'Heights found',
  /** Around the range, which stands out. */
  wouldLie: ({ file }: { file: string }) => `${file}: the ground here would lie from`,
  aboveSea: 'above the sea. Check that before you use the heights.',
  areIn: 'Its heights are in',
  unit: ({ unit, range }: { unit: string; range: string }) => `${unit}: ${range}`,
  use: 'Use these heights',
  leaveOut: 'Leave out',
};

const parts = {
  all: 'The checks, the plan and the tables of Power',
  findings: 'The checks',
  power: 'The tables of Power',
  fit: 'The fit to the readings',
  plan: 'The plan',
};

/** What is worked out beside the window. */
const work = {
  notWorkedOut: ({ part, why }: { part: keyof typeof parts; why: string }) =>
    `${parts[part]} could not be worked out (${why}).`,
  goOnWorking: 'The drawing is safe in the file. Go on working; each change is another try. Or undo the last change.',
  /** Why a worker is lost, inside of a sentence. */
  noScript: 'its script could not be loaded',
  unreadable: 'an answer could not be read',
  noAnswer: ({ seconds }: { seconds: number }, f: Figures) => `it gave no answer for ${f.number(seconds)} s`,
};

/** Import, export, heights, coordinates. */
export const exchange = { importing, exporting, heights, work, coordinates };
