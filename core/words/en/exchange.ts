import type { Figures, Phrase } from '../types.ts';
import { file, note, remedy, shp, zip } from './exchange/file.ts';
import { heights } from './exchange/heights.ts';
import { intake, taken } from './exchange/intake.ts';
import { orderTables, outgoing, priceList, tables } from './exchange/outgoing.ts';
import { phone } from './exchange/phone.ts';
import { picture, pixels } from './exchange/picture.ts';
import { piece, unnamed } from './exchange/piece.ts';

/** Why a file can't be brought in or made, and what its parts can't become. */
export const exchange = {
  import: {
    tooMuch: ({ why }: { why: Phrase }, f: Figures) =>
      `The file would make ${f.say(why)}. Split it, leave a part out, or simplify its lines.`,
    nothingUsable: 'The file holds nothing that can be used. See what is said of each of its features.',
    notPlaced: ({ name }: { name: string }) =>
      `${name} is drawn on the blank grid and has no place on earth, so the file can't be laid onto it. Georeference the property first, or import into a new one.`,
    whichPlace: ({ places }: { places: number }, f: Figures) =>
      `The file holds ${f.number(places)} places that lie far from one another. Select which of them is the property; the others are left out.`,
    tooFar: ({ name, awayM }: { name: string; awayM: number }, f: Figures) =>
      `The file lies ${f.length(awayM)} from ${name}. Check that it is the right file, and whether latitude and longitude are exchanged in it; or import it into a new property.`,
    pointAsLine: 'A point can be no fence line.',
    onlyPoint: 'Only a point can be that.',
    tooManyPoints: ({ points, most }: { points: number; most: number }, f: Figures) =>
      `It has ${f.number(points)} points; a line can have up to ${f.number(most)}. Simplify the lines a little more.`,
    tangled: ({ times }: { times: number }, f: Figures) =>
      `The fences of the file would cross themselves and one another more than ${f.number(times)} times, as tracks over the same ground do. Simplify the lines more, or leave out those that show the same way again.`,
    changed: 'The property was changed meanwhile.',
  },
  /** What is too much for one edit, inside of a sentence. */
  limits: {
    changes: ({ changes, most }: { changes: number; most: number }, f: Figures) =>
      `${f.number(changes)} changes, and one step can make ${f.number(most)} at most`,
    megabytes: ({ megabytes, most }: { megabytes: number; most: number }, f: Figures) =>
      `${f.number(megabytes)} MB of changes, and one step can make ${f.number(most)} MB at most`,
  },
  make: {
    notPlaced: ({ name, format }: { name: string; format: string }) =>
      `${name} is drawn on the blank grid and has no place on earth; ${format} holds longitudes and latitudes only. Georeference the property first.`,
    nothingDrawn: 'Nothing is drawn yet, so there is no picture.',
  },
  file,
  shp,
  zip,
  remedy,
  note,
  unnamed,
  piece,
  taken,
  intake,
  picture,
  pixels,
  heights,
  outgoing,
  tables,
  orderTables,
  priceList,
  phone,
};
