import type { Figures, Phrase } from '../../types.ts';
import { type Shown, shown } from './shown.ts';

/** What a file is called where its name is not known. */
const fileNamed = (name: string | null) => name ?? 'The file';

/** Why a whole file can't be read. */
export const file = {
  empty: ({ name }: { name: string | null }) => `${fileNamed(name)} is empty.`,
  tooLong: ({ name, megabytes, most }: { name: string | null; megabytes: number; most: number }, f: Figures) =>
    `${fileNamed(name)} is ${f.number(megabytes)} MB long; files up to ${f.number(most)} MB can be read.`,
  unknownFormat: ({ name }: { name: string }) => `${name} is of no format that is known here.`,
  noMapInside: ({ holds }: { holds: readonly string[] }) =>
    `This packed (zip) file holds neither a KML map nor a Shapefile. In it are: ${holds.join(', ') || 'no files'}.`,
  packed: ({ why }: { why: Phrase }, f: Figures) => `The packed file can’t be read. ${f.say(why)}`,
  picture: 'This is a picture, not a map of lines and points.',
  partOfShapefile: 'This is one part of a Shapefile by itself.',
  database: 'This is a database (perhaps a GeoPackage, or a property of Undergate).',
  pdf: 'This is a PDF.',
  damagedPacked: 'This packed (zip) file is empty or damaged.',
  webPage: 'This is a web page, not a map; perhaps a download that asked to log in.',
  noKml: 'The packed file holds no KML.',
  otherXml: ({ root, wanted }: { root: string; wanted: 'KML' | 'GPX' }) =>
    `This is an XML file of the sort "${root}", not ${wanted}.`,
  ownEntities:
    'The file declares entities of its own, which can be made to swell without end; such files are not read.',
  xmlTooDeep: ({ most }: { most: number }, f: Figures) =>
    `The elements of the file lie more than ${f.number(most)} deep in one another.`,
  xmlBreaksOff: ({ line }: { line: number }) => `The file breaks off at line ${line}, before it is complete.`,
  xmlWrong: ({ line, column, said }: { line: number; column: number; said: string }) =>
    `The file is not valid XML: something is wrong at line ${line}, column ${column} (${said}).`,
  xmlNotGeoJson: 'This is an XML file (perhaps KML or GPX), not GeoJSON.',
  zipNotGeoJson: 'This is a packed (zip) file, not GeoJSON.',
  jsonBreaksOff: ({ line, column }: { line: number; column: number }) =>
    `The file breaks off at line ${line}, column ${column}, before it is complete.`,
  jsonWrong: ({ line, column, near }: { line: number; column: number; near: string }) =>
    `The file is not valid JSON: something is wrong at line ${line}, column ${column}${near === '' ? '' : ` (at "${near}")`}.`,
  noGeoJsonObject: ({ what }: { what: Shown }) => `The file holds ${shown(what)} where a GeoJSON object should be.`,
  noFeatureList: 'The file is a FeatureCollection without a list of features.',
  otherJson: ({ type }: { type: Shown }) => `The file is JSON of the type ${shown(type)}, not GeoJSON.`,
  foreignSystem: ({ system }: { system: Shown }) =>
    `The file says that its coordinates are in the system ${shown(system)}. GeoJSON (RFC 7946) has longitude and latitude in WGS 84 only.`,
  tooManyPieces: ({ pieces, most }: { pieces: number; most: number }, f: Figures) =>
    `The file holds ${f.number(pieces)} pieces; up to ${f.number(most)} can be read.`,
  tooManyLetters: ({ millions }: { millions: number }, f: Figures) =>
    `The file has over ${f.number(millions)} million letters.`,
  noText: 'This is not a text file.',
  tooManyRows: ({ rows }: { rows: number }, f: Figures) => `The file has over ${f.number(rows)} rows.`,
  openQuote: ({ row }: { row: number }) => `A quoted cell in row ${row} is not closed.`,
  noPlaces: ({ columns }: { columns: readonly string[] }) =>
    `The table has no columns of places. Its columns are: ${columns.join(', ') || 'none'}.`,
  unknownGrid: 'The table gives eastings and northings, and nothing says of which coordinate system.',
  noColumns: ({ missing, columns }: { missing: readonly string[]; columns: readonly string[] }) =>
    `The table has no column "${missing.join('" and no column "')}". Its columns are: ${columns.join(', ') || 'none'}.`,
  shp: ({ name, why }: { name: string; why: Phrase }, f: Figures) => `${name} can’t be read: ${f.say(why)}.`,
  noPrj: ({ layer }: { layer: string }) => `${layer} has no .prj file, so nobody can say what its coordinates mean.`,
  unknownPrj: ({ layer }: { layer: string }) =>
    `The .prj file of ${layer} names a coordinate system that can’t be worked with.`,
  /** The program failed at it. */
  failed: ({ fault }: { fault: string }) => `The file could not be read (${fault}).`,
  notImported: ({ fault }: { fault: string }) =>
    `The file could not be imported, by a fault of this program (${fault}).`,
};

/** What is wrong with a .shp file, inside of a sentence. */
export const shp = {
  noShapefile: 'it does not begin as a Shapefile does',
  recordLength: ({ record }: { record: number }) => `record ${record} has a length that can’t be`,
};

/** Why a packed file can't be read: sentences about it. */
export const zip = {
  tooManyFiles: ({ files, most }: { files: number; most: number }, f: Figures) =>
    `It holds ${f.number(files)} files; up to ${f.number(most)} are looked at.`,
  zip64: 'It is larger than a plain zip file can be (zip64).',
  locked: ({ name }: { name: string }) => `${name} in it is locked with a password.`,
  notWhole: ({ name }: { name: string }) => `${name} in it is not whole: part of the file is missing.`,
  unknownPacking: ({ name, method }: { name: string; method: number }) =>
    `${name} in it is packed in a way that is not known here (method ${method}).`,
  damagedContents: ({ name }: { name: string }) => `${name} in it can’t be unpacked: its contents are damaged.`,
  noList: 'Its list of contents is missing: the file breaks off, or is damaged.',
  damagedList: 'Its list of contents is damaged.',
  tooLarge: ({ name, megabytes }: { name: string; megabytes: number }, f: Figures) =>
    `${name} in it unpacks to more than the ${f.number(megabytes)} MB that are left for it. Perhaps it was made to do harm.`,
};

/** What to do about a file, or about a piece of it. */
export const remedy = {
  selectMap: 'Select a GeoJSON, KML, KMZ or GPX file, a zipped Shapefile, or a table of points (CSV).',
  splitOrSimplify: 'Split it, or simplify its lines first.',
  splitOrLeave: 'Split it, or leave out what is not needed.',
  unpackMap: 'Unpack it and select the map in it.',
  copyAgain: 'Copy or save it again.',
  copyMissing: 'Copy or save it again; part of it is missing.',
  asUnderlay: 'Bring it in as a map underneath, on the page Draw.',
  packShapefile: 'Pack its .shp, .dbf and .prj together into one zip file.',
  openOrConvert: 'Open a property with Open; save a GeoPackage as GeoJSON first.',
  pictureOfMap: 'Save the map in it as a picture and bring that in as a map underneath.',
  download: 'Download the file again.',
  selectKmz: 'Select a KMZ file, or a zipped Shapefile.',
  selectKml: 'Select a KML, KMZ or GPX file.',
  selectGpx: 'Select a GPX, KML or KMZ file.',
  plainXml: 'Save it again from the program that made it, as plain KML or GPX.',
  fewerFolders: 'Save it again with fewer folders in folders.',
  fixThere: 'Fix it there, or save it again from the program that made it.',
  saveAgain: 'Save it again from the program that made it.',
  selectWithFeature: 'Select a GeoJSON file with at least one feature.',
  asGeoJson: 'Save it as GeoJSON first.',
  unpack: 'Unpack it first.',
  selectGeoJson: 'Select a GeoJSON file.',
  selectOfType: 'Select a file whose type is FeatureCollection, Feature or a geometry.',
  toWgs84: 'Convert it to WGS 84 (EPSG:4326) in the program that made it.',
  smallerTable: 'Select a smaller table.',
  selectCsv: 'Select a CSV file.',
  withHeading: 'Select a CSV file with a heading row.',
  fixQuotes: 'Fix the quotes and try again.',
  nameColumns: 'Name two of them lon and lat, or easting and northing, in its first row.',
  selectSystem: 'Select that system under Coordinates first, or give the places as lon and lat.',
  columnsAsExported: 'Name the columns as in a price list that was exported from here.',
  prjIntoZip: 'Put the .prj file into the zip, or save it in WGS 84 (EPSG:4326).',
  nothingChanged: 'Nothing was changed. Save the file again from the program that made it, or split it.',
  fixFile: 'Fix the file.',
  fixOrLeave: 'Fix the file, or go on without it.',
  drawOrLeave: 'Draw it in the program that made the file, or go on without it.',
  drawAsLine: 'Draw it as a line, point or outline in the program that made the file.',
  saveAsLine: 'Save it as a line, point or outline in the program that made the file.',
  joinPieces: 'Join its pieces in the program that changed it.',
  checkCoordinates: 'Check the coordinates: longitude first, then latitude, in degrees of WGS 84.',
  fixOrLeaveThere: 'Fix it in the program that made the file, or go on without it.',
  update: 'Bring this Undergate up to date and import the file again, or go on without it.',
  fixRow: ({ row }: { row: number }) => `Fix row ${row} of the table.`,
  simplifyMore: 'Simplify the lines more, or leave it out.',
  selectOther: 'Leave out this piece, or select something else for it.',
  raiseDistance: 'Raise the distance, or import it as a post.',
  moveOrPlace: 'Move it in the program that made the file, or place it here by hand.',
  firstIsUsed: 'The first of the two is used.',
  fixOrDraw: 'Fix the file, or draw it again here.',
  leftOutUnless: 'It is left out unless you select what it becomes.',
};

/** What is said of a file that could be read. */
export const note = {
  guessedLetters: 'The letters of the file were taken for Windows-1252. If accents look wrong, save it as UTF-8.',
  otherMaps: ({ maps, read }: { maps: number; read: string }, f: Figures) =>
    `The packed file holds ${f.number(maps)} maps; ${read} is read. Unpack the others to read them.`,
  networkLink: 'The file points to other files; only what lies in it is read. Open the others by themselves.',
  groundOverlay: 'The file lays pictures on the map; they are left out. Bring a picture in as a map underneath.',
  photoOverlay: 'Photographs in the file are left out.',
  screenOverlay: 'Pictures for the edge of the screen in the file are left out.',
  namesWgs84: 'The file names its coordinate system, WGS 84, in the old way; that is fine.',
  smallAsDegrees: ({ first, second }: { first: string; second: string }) =>
    `The figures of “${first}” and “${second}” are as small as degrees: they were read as longitude and latitude.`,
  grid: ({ system }: { system: string }) => `Eastings and northings were read as ${system}.`,
  noDbf: ({ layer }: { layer: string }) => `${layer}: the .dbf with the names is missing; its shapes are numbered.`,
  unreadableDbf: ({ layer }: { layer: string }) =>
    `${layer}: the .dbf with the names can’t be read; its shapes are numbered.`,
  cutShort: ({ layer }: { layer: string }) => `${layer}: the file breaks off; only what is whole of it is shown.`,
  noPrj: ({ layer }: { layer: string }) =>
    `${layer} has no .prj file; its coordinates look like degrees and are taken as WGS 84.`,
  fromSystem: ({ layer, system }: { layer: string; system: string }) =>
    `${layer} was brought to WGS 84 from ${system}.`,
  unknownShift: ({ layer, system }: { layer: string; system: string }) =>
    `${layer} is in ${system}, whose datum may lie up to a few hundred metres from WGS 84. Check a point that you know.`,
  withoutFix: ({ positions }: { positions: number }, f: Figures) =>
    `${positions === 1 ? 'One position' : `${f.number(positions)} positions`} of lines at latitude 0, longitude 0 were left out: the receiver had no fix there.`,
  wrapped: 'Longitudes past 180 were taken round to the other side of the 180 meridian.',
  firstProblems: ({ listed, problems }: { listed: number; problems: number }, f: Figures) =>
    `Only the first ${f.number(listed)} of ${f.number(problems)} problems are listed.`,
  latitudesAbove90: 'Many latitudes are above 90: latitude and longitude look exchanged.',
  wouldFitSwapped: 'The file lies far from this property, and would lie on it with latitude and longitude exchanged.',
};
