import { message } from '../words/message.ts';
import { readGeoJson } from './geojson/readGeoJson.ts';
import { readGpx } from './gpx/readGpx.ts';
import { kindOfPicture } from './image/kindOfPicture.ts';
import { readKml } from './kml/readKml.ts';
import { readKmz } from './kml/readKmz.ts';
import { readPoints } from './points/readPoints.ts';
import { refuse } from './preview/refuse.ts';
import type { ReadOptions, ReadResult } from './preview/types.ts';
import { readShapefile } from './shapefile/readShapefile.ts';
import { isShp } from './shapefile/readShp.ts';
import { decodeText } from './text/decodeText.ts';
import { encodingOf } from './xml/encodingOf.ts';
import { isZip, openZip, ZipFault } from './zip/readZip.ts';

/** Larger files are refused before they are looked into: in memory a file takes many times its length. */
export const largestFileBytes = 64 * 1024 * 1024;

const selectAnother = message('exchange.remedy.selectMap');

/**
 * Reads a file of any format that comes in, told by what is in it; its name only helps to say what is wrong. Nothing
 * in it is taken over yet.
 */
export function readAny(fileName: string, bytes: Uint8Array, options: ReadOptions = {}): ReadResult {
  if (bytes.length === 0) return refuse(message('exchange.file.empty', { name: fileName }), selectAnother);
  if (bytes.length > largestFileBytes) {
    const megabytes = Math.round(bytes.length / 1024 / 1024);
    const most = largestFileBytes / 1024 / 1024;
    return refuse(
      message('exchange.file.tooLong', { name: fileName, megabytes, most }),
      message('exchange.remedy.splitOrSimplify'),
    );
  }
  if (isZip(bytes)) return readPacked(bytes, options);
  const other = whatElse(bytes);
  if (other) return other;
  return readTextFile(fileName, bytes, options);
}

function readPacked(bytes: Uint8Array, options: ReadOptions): ReadResult {
  try {
    const archive = openZip(bytes);
    const { entries } = archive;
    if (entries.some(({ name }) => /\.kml$/i.test(name))) return readKmz(archive, options);
    if (entries.some(({ name }) => /\.shp$/i.test(name))) return readShapefile(archive, options);
    const holds = entries.slice(0, 5).map(({ name }) => name.slice(0, 40));
    return refuse(message('exchange.file.noMapInside', { holds }), message('exchange.remedy.unpackMap'));
  } catch (error) {
    if (error instanceof ZipFault) {
      return refuse(message('exchange.file.packed', { why: error.said }), message('exchange.remedy.copyAgain'));
    }
    throw error;
  }
}

/** Files that are known, and are not read here. */
function whatElse(bytes: Uint8Array): ReadResult | null {
  const begins = (text: string) => Array.from(text).every((letter, i) => bytes[i] === letter.charCodeAt(0));
  if (kindOfPicture(bytes) !== null) {
    return refuse(message('exchange.file.picture'), message('exchange.remedy.asUnderlay'));
  }
  if (isShp(bytes)) {
    return refuse(message('exchange.file.partOfShapefile'), message('exchange.remedy.packShapefile'));
  }
  if (begins('SQLite format 3')) {
    return refuse(message('exchange.file.database'), message('exchange.remedy.openOrConvert'));
  }
  if (begins('%PDF')) return refuse(message('exchange.file.pdf'), message('exchange.remedy.pictureOfMap'));
  if (begins('PK')) return refuse(message('exchange.file.damagedPacked'), message('exchange.remedy.copyAgain'));
  return null;
}

function readTextFile(fileName: string, bytes: Uint8Array, options: ReadOptions): ReadResult {
  const { text, guessed } = decodeText(bytes, encodingOf(bytes));
  const first = /[^\s\uFEFF]/.exec(text)?.[0];
  if (first === undefined) return refuse(message('exchange.file.empty', { name: fileName }), selectAnother);
  if (text.slice(0, 4000).includes('\0')) {
    return refuse(message('exchange.file.unknownFormat', { name: fileName }), selectAnother);
  }
  if (first === '{' || first === '[') return readGeoJson(text, options);
  if (first === '<') return readXmlFile(text, options);
  if (/\.(geo)?json$/i.test(fileName)) return readGeoJson(text, options);
  const read = readPoints(text, options);
  if (!read.ok || !guessed) return read;
  const note = message('exchange.note.guessedLetters');
  return { ok: true, preview: { ...read.preview, notes: [...read.preview.notes, note] } };
}

function readXmlFile(text: string, options: ReadOptions): ReadResult {
  const name = rootName(text);
  if (name === 'gpx') return readGpx(text, options);
  if (name === 'html' || name === 'HTML') {
    return refuse(message('exchange.file.webPage'), message('exchange.remedy.download'));
  }
  return readKml(text, options);
}

/** The name of the outermost element, without its prefix, as far as it stands near the beginning. */
function rootName(text: string): string | undefined {
  return /<(?:[\w.-]+:)?([A-Za-z][\w.-]*)(?=[\s/>])/.exec(text.slice(0, 20_000).replace(/<!--[\s\S]*?-->/g, ''))?.[1];
}
