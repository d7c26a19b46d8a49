import { type Shown, shown } from './shown.ts';

type At = { readonly number: number };

/** What a piece of a file is called that has no name there. */
export const unnamed = {
  feature: ({ number }: At) => `Feature ${number}`,
  placemark: ({ number }: At) => `Placemark ${number}`,
  shape: ({ number }: At) => `Shape ${number}`,
  row: ({ number }: At) => `Row ${number}`,
  piece: ({ number }: At) => `Piece ${number}`,
};

/** What is wrong with a piece of a file, as the end of a sentence about it. */
export const piece = {
  notFeature: ({ what }: { what: Shown }) => `it is ${shown(what)}, not a feature`,
  otherType: ({ type }: { type: Shown }) => `it is of the type ${shown(type)}, not a feature`,
  noGeometry: 'it has no geometry',
  inPieces: 'its line is in several pieces that do not meet',
  geometryNoObject: ({ what }: { what: Shown }) => `its geometry is ${shown(what)}, not an object`,
  geometryType: ({ type }: { type: Shown }) =>
    `its geometry is of the type ${shown(type)}, which GeoJSON does not have`,
  nested: 'its collections are nested too deeply',
  noLength: 'its line has no length: it needs two different positions',
  outlineTooFew: 'its outline needs three different positions',
  noList: ({ what }: { what: Shown }) => `where a list should be there is ${shown(what)}`,
  coordinatesNoList: ({ what }: { what: Shown }) => `its coordinates are ${shown(what)}, not a list`,
  noPosition: ({ number, what }: { number: number; what: Shown }) =>
    `position ${number} is ${shown(what)}, not a longitude and a latitude`,
  noNumbers: ({ number, first, second }: { number: number; first: Shown; second: Shown }) =>
    `position ${number} is not made of numbers (${shown(first)}, ${shown(second)})`,
  notOnEarth: ({ number, lon, lat }: { number: number; lon: string; lat: string }) =>
    `position ${number} (longitude ${lon}, latitude ${lat}) is no place on earth`,
  fields: 'its fields are not as they should be',
  unknownKind: ({ kind, newer }: { kind: string; newer: boolean }) =>
    `${newer ? 'a newer Undergate wrote the file, and it is' : 'it is'} of a kind that this one does not know ("${kind}")`,
  model: 'it is a model in three dimensions',
  surface: 'it is a surface in three dimensions',
  damagedRecord: 'its record is damaged: it says it is longer than it is',
  shapeType: ({ type }: { type: number }) => `it is of the shape type ${type}, which is not known`,
  emptyPlace: ({ figure }: { figure: 'longitude' | 'latitude' | 'easting' | 'northing' }) => `its ${figure} is empty`,
  unreadablePlace: ({ lat, lon }: { lat: string; lon: string }) => `its place can’t be read (“${lat}”, “${lon}”)`,
  gridNowhere: 'its easting and northing give no place',
};
