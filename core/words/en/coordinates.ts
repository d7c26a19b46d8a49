import { formatFar } from '../numbers/write.ts';
import type { Figures, Phrase } from '../types.ts';

type Zone = { readonly zone: number; readonly south: boolean };

const utm = ({ zone, south }: Zone) => `UTM ${zone} ${south ? 'south' : 'north'}`;

const degreesExample =
  'Type latitude and longitude such as "41.28312 S, 174.77639 E" or "41° 16.987\' S, 174° 46.583\' E".';
const gridExample = 'Type east and north such as "1504849.4 E, 5173296.0 N".';

/** A place on the blank grid as it is typed. */
const onGrid = (f: Figures) => (f.units === 'imperial' ? '395.0 ft E, 108.9 ft S' : '120.4 m E, 33.2 m S');

/** Coordinates and systems of coordinates. */
export const coordinates = {
  /** What systems are called. */
  systems: {
    degrees: 'Latitude and longitude, degrees (WGS 84)',
    degreesMinutes: 'Latitude and longitude, degrees and minutes (WGS 84)',
    utm: 'UTM, in the zone of the place (WGS 84)',
    mga2020: ({ zone }: { zone: number }) => `MGA2020 zone ${zone}`,
    mga94: ({ zone }: { zone: number }) => `MGA94 zone ${zone}`,
    irish: 'Irish Transverse Mercator',
    webMercator: 'Web Mercator',
    wgs84WithHeights: 'WGS 84 with heights',
    albersOf48: ({ datum }: { datum: string }) => `${datum}, Albers of the 48 states`,
    lambertOfCanada: ({ datum }: { datum: string }) => `${datum}, Lambert of Canada`,
    albersOfAustralia: ({ datum }: { datum: string }) => `${datum}, Albers of Australia`,
    lambertOfAustralia: ({ datum }: { datum: string }) => `${datum}, Lambert of Australia`,
    laeaOfEurope: ({ datum }: { datum: string }) => `${datum}, LAEA of Europe`,
    britishGrid: 'British National Grid',
    irishGrid: ({ datum }: { datum: string }) => `Irish Grid (${datum})`,
    /** By its name alone: a code, or what the user called it. */
    named: ({ name }: { name: string }) => name,
    zone: utm,
    zoneOn: ({ datum, ...zone }: Zone & { datum: string }) => `${datum}, ${utm(zone)}`,
    /** How far its datum may lie from WGS 84. */
    within: ({ system, offM }: { system: Phrase; offM: number }, f: Figures) =>
      `${f.say(system)} (within about ${offM} m of WGS 84)`,
    /** One whose PROJ text was pasted. */
    itsOwn: 'its own system',
  },
  /** East and north of a map grid, with its zone. */
  inZone: ({ place, zone }: { place: string; zone: Zone }) => `${place} (${utm(zone)})`,
  /** What is wrong with a place that was typed. */
  typed: {
    empty: 'Type a place.',
    degrees: degreesExample,
    twoLatitudes: `Both figures are marked as latitude (N or S). ${degreesExample}`,
    twoLongitudes: `Both figures are marked as longitude (E or W). ${degreesExample}`,
    twoLetters: ({ typed }: { typed: string }) => `“${typed}” has two letters. ${degreesExample}`,
    signAndLetter: ({ typed }: { typed: string }) => `“${typed}” has a minus sign and a letter. Use one of them.`,
    minutes: ({ minutes }: { minutes: string }) => `${minutes} minutes: there are fewer than 60 in a degree.`,
    seconds: ({ seconds }: { seconds: string }) => `${seconds} seconds: there are fewer than 60 in a minute.`,
    zone: 'Type the zone too, such as "37 S 412345 E 7654321 N": the property has no place yet.',
    zoneAlone: 'Type the zone and the half of the earth, such as "37 south" or "14 N".',
    eastNorth: gridExample,
    sameLetter: ({ letter }: { letter: string }) => `Both figures are marked ${letter}. ${gridExample}`,
    metresOrDegrees:
      'These can be metres with thousands or degrees with decimal commas. Type metres without commas (35404; 47665), degrees with their sign (35,404°; 47,665°).',
    unclear: 'It is not clear where the first figure ends. Part the two with a semicolon, such as "12,5; 100,25".',
    notOnEarth: 'That is no place on earth in this coordinate system. Check the figures, their signs and their order.',
    farOff: ({ awayM }: { awayM: number }, f: Figures) =>
      `That is ${formatFar(awayM, f.units)} from this property. Check the figures, their signs, their order and the coordinate system.`,
    swapped: 'These look swapped: the second figure where the first should be.',
    degreesOnGrid: (_: null, f: Figures) =>
      `This looks like latitude and longitude, and the property has no place on earth yet. Place it on the earth first, in the File menu; or, if it is a place on the blank grid, type the unit too: ${f.units === 'imperial' ? '“40 ft E, 330 ft N”' : '“12.5 m E, 100 m N”'}.`,
    degreesElsewhere: (_: null, f: Figures) =>
      `This looks like latitude and longitude: they belong in “On the earth”. Lengths of the drawing are typed with their unit, such as “${onGrid(f)}”.`,
    grid: (_: null, f: Figures) => `Type east and north of the grid’s origin, such as "${onGrid(f)}".`,
    offGrid: ({ mostM }: { mostM: number }, f: Figures) =>
      `That is over ${formatFar(mostM, f.units)} from the grid’s origin. Coordinates of a map grid can be typed once the property has its place on earth: see the File menu.`,
  },
  /** Why a PROJ text gives no system. */
  definition: {
    notUsable:
      'This definition can’t be worked with. Copy the PROJ text of the system again, from its first +proj= to its end.',
    tooLong: 'The definition is too long to be one coordinate system.',
    notProj:
      'A definition begins with +proj= and has only parts such as +lat_0=0. Copy the PROJ text (“proj4”) of the system.',
    geocentric: 'A geocentric system has no map plane. Select a projected system of the same region.',
    gridFile:
      'This definition needs a grid file (+nadgrids), which is not to be had here. Use one with +towgs84, or none.',
  },
  /** Why control points give a picture no place. */
  fit: {
    notANumber: 'A control point has a coordinate that is not a number.',
    twoNeeded: 'Two control points at least are needed: add another.',
    threeNeeded: 'Three control points at least are needed: add another.',
    onePlaceInPicture: 'The control points are all at one place in the picture: move one far from the others.',
    onePlaceOnMap: 'The control points are all at one place on the map: check their coordinates.',
    twoApartInPicture: 'The control points are all at one place in the picture: move two of them apart.',
    twoApartOnMap: 'The control points are all at one place on the map: move two of them apart.',
    oneLineInPicture:
      'The control points lie on one line in the picture (or only two of them differ): add one well off the line, or use a fit without stretch.',
    oneLineOnMap:
      'The control points lie on one line on the map (or only two of them differ): add one well off the line, or use a fit without stretch.',
  },
};
