import type { LonLat } from '../geometry/types.ts';
import { type Message, message } from '../words/message.ts';
import { readDecimal } from '../words/numbers/read.ts';
import { fixed } from '../words/numbers/write.ts';

/** Latitude, then longitude, to about a decimetre: "41.283120° S, 174.776390° E". */
export function formatDegrees([lon, lat]: LonLat): string {
  return `${fixed(Math.abs(lat), 6)}° ${northSouth(lat)}, ${fixed(Math.abs(lon), 6)}° ${eastWest(lon)}`;
}

/** Degrees and minutes to about 2 dm: "41° 16.9872' S, 174° 46.5834' E". */
export function formatDegreesMinutes([lon, lat]: LonLat): string {
  return `${degreesMinutes(lat)} ${northSouth(lat)}, ${degreesMinutes(lon)} ${eastWest(lon)}`;
}

// A figure that is shown as nothing lies on no side.
const isBelow = (degrees: number) => Number(degrees.toFixed(6)) < 0;
const northSouth = (lat: number) => (isBelow(lat) ? 'S' : 'N');
const eastWest = (lon: number) => (isBelow(lon) ? 'W' : 'E');

function degreesMinutes(value: number): string {
  // Rounded first, so that no minute is ever written as 60.
  const tenThousandths = Math.round(Math.abs(value) * 60 * 10_000);
  const degrees = Math.floor(tenThousandths / 600_000);
  return `${degrees}° ${fixed((tenThousandths % 600_000) / 10_000, 4)}'`;
}

/** One angle as it was typed. */
export interface TypedAngle {
  readonly degrees: number;
  /** What its letter says; null: no letter. */
  readonly axis: 'lat' | 'lon' | null;
}

export type TypedAngles = { readonly angles: readonly [TypedAngle, TypedAngle] } | { readonly problem: Message };

/** Two angles in any of the usual ways: decimal, degrees and minutes, with seconds; signs or letters. */
export function readAngles(text: string): TypedAngles {
  const halves = splitInTwo(plainSigns(text));
  if (!halves) return { problem: message('coordinates.typed.degrees') };
  const [first, second] = halves.map(readAngle);
  if (!first || !second) return { problem: message('coordinates.typed.degrees') };
  if ('problem' in first) return first;
  if ('problem' in second) return second;
  if (first.axis !== null && first.axis === second.axis) {
    return {
      problem: message(first.axis === 'lat' ? 'coordinates.typed.twoLatitudes' : 'coordinates.typed.twoLongitudes'),
    };
  }
  return { angles: [first, second] };
}

/** Typographic signs as the plain ones. */
function plainSigns(text: string): string {
  return text
    .trim()
    .replace(/[−–]/g, '-')
    .replace(/[º˚]/g, '°')
    .replace(/[′’‘]/g, "'")
    .replace(/[″”“]|''/g, '"')
    .toUpperCase();
}

function splitInTwo(text: string): readonly [string, string] | null {
  for (const parting of [/;/, /,\s+/, /,/]) {
    const halves = text.split(parting);
    if (halves.length === 2) return [halves[0]!, halves[1]!];
  }
  const withLetters = /^(.*?[NSEW])\s*(.*[NSEW])$/.exec(text) ?? /^([NSEW].*?)\s*([NSEW].*)$/.exec(text);
  if (withLetters && /\d/.test(withLetters[1]!) && /\d/.test(withLetters[2]!))
    return [withLetters[1]!, withLetters[2]!];
  const withDegrees = /^(-?[\d.,]+\s*°.*?)\s+(-?[\d.,]+\s*°.*)$/.exec(text);
  if (withDegrees) return [withDegrees[1]!, withDegrees[2]!];
  const words = text.split(/\s+/);
  if (words.length % 2 !== 0) return null;
  return [words.slice(0, words.length / 2).join(' '), words.slice(words.length / 2).join(' ')];
}

function readAngle(text: string): TypedAngle | { readonly problem: Message } | null {
  const found =
    /^\s*([NSEW])?\s*([+-])?(\d+(?:[.,]\d*)?|[.,]\d+)\s*°?\s*(?:(\d+(?:[.,]\d*)?)\s*'?\s*(?:(\d+(?:[.,]\d*)?)\s*"?)?)?\s*([NSEW])?\s*$/.exec(
      text,
    );
  if (!found) return null;
  const [, before, sign, , , , after] = found;
  // An angle has no thousands, so its comma is the decimal sign.
  const [degrees = 0, minutes = 0, seconds = 0] = found
    .slice(3, 6)
    .map((part) => (part === undefined ? 0 : (readDecimal(part) ?? Number.POSITIVE_INFINITY)));
  if (before && after) return { problem: message('coordinates.typed.twoLetters', { typed: text.trim() }) };
  const letter = before ?? after;
  if (sign === '-' && letter) {
    return { problem: message('coordinates.typed.signAndLetter', { typed: text.trim() }) };
  }
  if (minutes >= 60) return { problem: message('coordinates.typed.minutes', { minutes: `${minutes}` }) };
  if (seconds >= 60) return { problem: message('coordinates.typed.seconds', { seconds: `${seconds}` }) };
  const size = degrees + minutes / 60 + seconds / 3600;
  const negative = sign === '-' || letter === 'S' || letter === 'W';
  const axis = letter === undefined ? null : letter === 'N' || letter === 'S' ? 'lat' : 'lon';
  return { degrees: negative ? -size : size, axis };
}
