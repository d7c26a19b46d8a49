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

const chooseAnother = 'Choose a GeoJSON, KML, KMZ or GPX file, a zipped Shapefile, or a table of points (CSV).';

/**
 * Reads a file of any format that comes in, told by what is in it; its name only helps to say what is wrong. Nothing
 * in it is taken over yet.
 */
export function readAny(fileName: string, bytes: Uint8Array, options: ReadOptions = {}): ReadResult {
  if (bytes.length === 0) return refuse(`${fileName} is empty.`, chooseAnother);
  if (bytes.length > largestFileBytes) {
    const size = Math.round(bytes.length / 1024 / 1024);
    const most = largestFileBytes / 1024 / 1024;
    return refuse(
      `${fileName} is ${size} MB long; files up to ${most} MB can be read.`,
      'Split it, or simplify its lines first.',
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
    const holds = entries
      .slice(0, 5)
      .map(({ name }) => name.slice(0, 40))
      .join(', ');
    return refuse(
      `This packed (zip) file holds neither a KML map nor a Shapefile. In it are: ${holds || 'no files'}.`,
      'Unpack it and choose the map in it.',
    );
  } catch (error) {
    if (error instanceof ZipFault)
      return refuse(`The packed file can’t be read. ${error.message}`, 'Copy or save it again.');
    throw error;
  }
}

/** Files that are known, and are not read here. */
function whatElse(bytes: Uint8Array): ReadResult | null {
  const begins = (text: string) => Array.from(text).every((letter, i) => bytes[i] === letter.charCodeAt(0));
  if (kindOfPicture(bytes) !== null) {
    return refuse(
      'This is a picture, not a map of lines and points.',
      'Bring it in as a map underneath, on the page Draw.',
    );
  }
  if (isShp(bytes)) {
    return refuse(
      'This is one part of a Shapefile by itself.',
      'Pack its .shp, .dbf and .prj together into one zip file.',
    );
  }
  if (begins('SQLite format 3')) {
    return refuse(
      'This is a database (perhaps a GeoPackage, or a property of Undergate).',
      'Open a property with Open; save a GeoPackage as GeoJSON first.',
    );
  }
  if (begins('%PDF'))
    return refuse('This is a PDF.', 'Save the map in it as a picture and bring that in as a map underneath.');
  if (begins('PK')) return refuse('This packed (zip) file is empty or damaged.', 'Copy or save it again.');
  return null;
}

function readTextFile(fileName: string, bytes: Uint8Array, options: ReadOptions): ReadResult {
  const { text, guessed } = decodeText(bytes, encodingOf(bytes));
  const first = /[^\s\uFEFF]/.exec(text)?.[0];
  if (first === undefined) return refuse(`${fileName} is empty.`, chooseAnother);
  if (text.slice(0, 4000).includes('\0'))
    return refuse(`${fileName} is of no format that is known here.`, chooseAnother);
  if (first === '{' || first === '[') return readGeoJson(text, options);
  if (first === '<') return readXmlFile(text, options);
  if (/\.(geo)?json$/i.test(fileName)) return readGeoJson(text, options);
  const read = readPoints(text, options);
  if (!read.ok || !guessed) return read;
  const note = 'The letters of the file were taken for Windows-1252. If accents look wrong, save it as UTF-8.';
  return { ok: true, preview: { ...read.preview, notes: [...read.preview.notes, note] } };
}

function readXmlFile(text: string, options: ReadOptions): ReadResult {
  const name = rootName(text);
  if (name === 'gpx') return readGpx(text, options);
  if (name === 'html' || name === 'HTML') {
    return refuse(
      'This is a web page, not a map; perhaps a download that asked to log in.',
      'Download the file again.',
    );
  }
  return readKml(text, options);
}

/** The name of the outermost element, without its prefix, as far as it stands near the beginning. */
function rootName(text: string): string | undefined {
  return /<(?:[\w.-]+:)?([A-Za-z][\w.-]*)(?=[\s/>])/.exec(text.slice(0, 20_000).replace(/<!--[\s\S]*?-->/g, ''))?.[1];
}
