import { earthAt } from '../geometry/earth.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import { type Message, message } from '../words/message.ts';
import { mPerFoot } from '../words/numbers/units.ts';
import type { Units } from '../words/numbers/write.ts';
import { readAngles, type TypedAngle } from './degrees.ts';
import { projectionOf } from './projection.ts';
import type { CoordinateSystem } from './systems.ts';
import { readPair, type TypedFigure, type TypedPair } from './typedPair.ts';
import { readUtmZone, utmDefinition, utmZoneAt } from './utm.ts';

export type PlaceRead =
  | { readonly lonLat: LonLat; readonly problem: null }
  | {
      readonly lonLat: null;
      readonly problem: Message;
      /** The place with its two figures the other way round, where that makes sense and this way does not. */
      readonly swapped: LonLat | null;
    };

/** Farther than this from the property is taken for a slip: of the order, of a sign, or of the coordinate system. */
const farM = 500_000;

/**
 * The place that was typed in a coordinate system. `near` is a place of the property (null: it has none yet): it
 * decides the UTM zone where none is typed, and tells figures that look swapped.
 */
export function readPlace(text: string, system: CoordinateSystem, near: LonLat | null): PlaceRead {
  if (text.trim() === '') return problem(message('coordinates.typed.empty'));
  if (system.kind === 'degrees' || hasDegreeSigns(text)) return preferred(readDegrees(text), near);
  const onGrid = preferred(readGrid(text, system, near), near);
  const pair = readPair(text);
  if (typeof pair !== 'object' || pair.some(({ unit }) => unit !== null)) return onGrid;
  if (!near && degreesWithCommas(text.trim(), pair)) return problem(message('coordinates.typed.metresOrDegrees'));
  // Within some metres of a map grid's origin no farm lies, so bare figures as small as degrees are degrees.
  const small = pair.every(({ value }) => Math.abs(value) <= 180);
  const wrong = onGrid.lonLat === null && !onGrid.swapped;
  if (!small && !(wrong && near)) return onGrid;
  const degrees = preferred(readDegrees(text), near);
  return degrees.lonLat || degrees.swapped || (small && !wrong) ? degrees : onGrid;
}

/** Degrees may be typed in any system, if they show what they are. */
function hasDegreeSigns(text: string): boolean {
  return /[°º˚]/.test(text) || /^\s*-?\d{1,2}(\.\d+)?\s*[NS]\b.*[EW]\s*$/i.test(text);
}

interface BothWays {
  readonly asTyped: LonLat | null;
  readonly swapped: LonLat | null;
  /** Its zone was typed: it is meant, however far off it is. */
  readonly meant?: boolean;
}

type Read = BothWays | { readonly problem: Message };

function readDegrees(text: string): Read {
  const read = readAngles(text);
  return 'problem' in read ? read : placesOf(read.angles);
}

function placesOf([first, second]: readonly [TypedAngle, TypedAngle]): BothWays {
  const [lat, lon] = first.axis === 'lon' || second.axis === 'lat' ? [second, first] : [first, second];
  const lettered = first.axis !== null || second.axis !== null;
  return { asTyped: onEarth(lon, lat), swapped: lettered ? null : onEarth(lat, lon) };
}

function onEarth(lon: TypedAngle, lat: TypedAngle): LonLat | null {
  return Math.abs(lat.degrees) <= 90 && Math.abs(lon.degrees) <= 180 ? [lon.degrees, lat.degrees] : null;
}

function readGrid(text: string, system: Exclude<CoordinateSystem, { kind: 'degrees' }>, near: LonLat | null): Read {
  const typed = readEastNorth(text);
  if ('problem' in typed) return typed;
  const zone = typed.zone ? readUtmZone(typed.zone) : null;
  if (system.kind === 'utm' && !zone && !near) {
    return { problem: message('coordinates.typed.zone') };
  }
  const utm = system.kind === 'utm' ? (zone ?? utmZoneAt(near!)) : null;
  const { projection, problem: why } = projectionOf(
    utm ? utmDefinition(utm) : (system as { definition: string }).definition,
  );
  if (!projection) return { problem: why };
  const [east, north] = typed.eastNorth;
  const place = (grid: Xy) => sensible(projection.toLonLat(grid), grid, projection.toGrid);
  return { asTyped: place([east, north]), swapped: typed.lettered ? null : place([north, east]), meant: zone !== null };
}

/** A place that a way there and back leads to; anything else is off the projection. */
function sensible(lonLat: LonLat, grid: Xy, toGrid: (lonLat: LonLat) => Xy): LonLat | null {
  if (!lonLat.every(Number.isFinite) || Math.abs(lonLat[1]) > 90 || Math.abs(lonLat[0]) > 180) return null;
  const [east, north] = toGrid(lonLat);
  const offset = Math.hypot(east - grid[0], north - grid[1]);
  return offset < 0.01 ? lonLat : null;
}

interface EastNorth {
  readonly eastNorth: Xy;
  readonly lettered: boolean;
  readonly zone: string | null;
}

function readEastNorth(text: string): EastNorth | { readonly problem: Message } {
  const plain = text.trim().replace(/[−–]/g, '-');
  const first = /^(?:utm\s*)?(\d{1,2}\s*(?:south|north|s|n))\b[\s,;:]*(?=\S*\d\S*.*\d)(.*)$/i.exec(plain);
  const last = /^(.*\d.*?)[\s,;(]*utm\s*(\d{1,2}\s*(?:south|north|s|n))\)?$/i.exec(plain);
  const [rest, zone] = first ? [first[2]!, first[1]!] : last ? [last[1]!, last[2]!] : [plain, null];
  const pair = readPair(rest);
  if (pair === 'unclear') return { problem: message('coordinates.typed.unclear') };
  const isEastNorth = ({ letter, unit }: TypedFigure) =>
    letter !== 'S' && letter !== 'W' && unit !== 'ft' && unit !== 'km';
  if (pair === 'none' || !pair.every(isEastNorth)) return { problem: message('coordinates.typed.eastNorth') };
  const [one, two] = pair;
  if (one.letter !== null && one.letter === two.letter) {
    return { problem: message('coordinates.typed.sameLetter', { letter: one.letter }) };
  }
  const northFirst = one.letter === 'N' || two.letter === 'E';
  return {
    eastNorth: northFirst ? [two.value, one.value] : [one.value, two.value],
    lettered: one.letter !== null || two.letter !== null,
    zone,
  };
}

function preferred(way: Read, near: LonLat | null): PlaceRead {
  if ('problem' in way) return problem(way.problem);
  const { asTyped, swapped } = way;
  if (!asTyped) {
    if (swapped && (!near || earthAt(near).distanceM(swapped, near) < farM)) return looksSwapped(swapped);
    return problem(message('coordinates.typed.notOnEarth'));
  }
  const offM = near ? earthAt(near).distanceM(asTyped, near) : 0;
  if (offM <= farM || way.meant) return { lonLat: asTyped, problem: null };
  if (swapped && earthAt(near!).distanceM(swapped, near!) < farM) return looksSwapped(swapped);
  return problem(message('coordinates.typed.farOff', { awayM: offM }));
}

function looksSwapped(swapped: LonLat): PlaceRead {
  return { lonLat: null, problem: message('coordinates.typed.swapped'), swapped };
}

function problem(why: Message): PlaceRead {
  return { lonLat: null, problem: why, swapped: null };
}

export type GridPlaceRead =
  | { readonly xy: Xy }
  | {
      readonly problem: Message;
      /** The place on earth, where latitude and longitude were typed instead. */
      readonly degrees: LonLat | null;
    };

/** Nothing that is drawn lies farther from the blank grid's origin; coordinates of a map grid do. */
const farthestOnGridM = 100_000;

/** With this many decimals a figure that could be degrees is taken for degrees: metres are not typed so finely. */
const decimalsOfDegrees = 3;

/**
 * East and north on the blank grid, metres or feet: "120.4 m E, 33.2 m S", "-12, 40". Figures that could be latitude and
 * longitude (they lie within them and have a letter or many decimals, or any sign of degrees) are never taken for metres;
 * with a unit behind them they always are.
 */
export function readGridPlace(text: string, units: Units): GridPlaceRead {
  const bare = text.trim().replace(/^geo:/i, '');
  const pair = readPair(bare);
  const degrees =
    bare === text.trim() && typeof pair === 'object'
      ? (likelyDegrees(pair) ?? degreesWithCommas(bare, pair))
      : degreesOnly(bare, pair);
  if (degrees) return { problem: message('coordinates.typed.degreesOnGrid'), degrees };
  if (pair === 'unclear') return { problem: message('coordinates.typed.unclear'), degrees: null };
  const wrong = { problem: message('coordinates.typed.grid'), degrees: null };
  if (pair === 'none') return wrong;
  const upright = pair.map(({ letter }) => (letter === null ? null : letter === 'N' || letter === 'S'));
  if (upright[0] !== null && upright[0] === upright[1]) return wrong;
  const values = pair.map(({ value, unit, letter }) => {
    const against = letter === 'S' || letter === 'W';
    return value * (units === 'imperial' && unit === null ? mPerFoot : 1) * (against ? -1 : 1);
  });
  const xy: Xy = upright[0] === true || upright[1] === false ? [values[1]!, values[0]!] : [values[0]!, values[1]!];
  if (Math.hypot(...xy) <= farthestOnGridM) return { xy };
  return { problem: message('coordinates.typed.offGrid', { mostM: farthestOnGridM }), degrees: null };
}

/** Where two figures could be metres or degrees: the place on earth that they would be, if that is what they look like. */
function likelyDegrees(pair: TypedPair): LonLat | null {
  if (pair.some(({ unit }) => unit !== null)) return null;
  if (!pair.some(({ letter, decimals }) => letter !== null || decimals >= decimalsOfDegrees)) return null;
  const angles = pair.map(({ value, letter }): TypedAngle => {
    const axis = letter === null ? null : letter === 'N' || letter === 'S' ? 'lat' : 'lon';
    return { degrees: letter === 'S' || letter === 'W' ? -value : value, axis };
  });
  const [first, second] = angles as [TypedAngle, TypedAngle];
  if (first.axis !== null && first.axis === second.axis) return null;
  const read = placesOf([first, second]);
  return read.asTyped ?? read.swapped;
}

/**
 * "-35,404; 47,665": two figures with one comma each, which may part thousands of metres or be the decimal sign of
 * degrees. Where a comma with a blank parts the two, as with decimal points, only figures of ten thousands are in doubt.
 */
function degreesWithCommas(text: string, pair: TypedPair): LonLat | null {
  const halves = /^[-+−–]?\s*(\d{1,3}),\d{3}(\s*;\s*|,\s+|\s+)[-+−–]?\s*(\d{1,3}),\d{3}$/.exec(text);
  if (!halves || (/^,/.test(halves[2]!) && halves[1]!.length === 1 && halves[3]!.length === 1)) return null;
  const [first, second] = pair.map(({ value }): TypedAngle => ({ degrees: value / 1000, axis: null }));
  const read = placesOf([first!, second!]);
  return read.asTyped ?? read.swapped;
}

/** A place in a way that only degrees are written in. */
function degreesOnly(text: string, pair: ReturnType<typeof readPair>): LonLat | null {
  if (pair === 'unclear' && !/[°º˚NSEW]/i.test(text)) return null;
  const read = readDegrees(text);
  return 'problem' in read ? null : (read.asTyped ?? read.swapped);
}
