import type { Figures } from '../../../types.ts';

type OnePixel = { readonly pixel: string };

/** How a picture lies, and the ways to place it better. */
export const placing = {
  ofPicture: 'Place of the picture',
  title: 'Place',
  byEye: 'Laid by eye: nothing measured on it counts yet.',
  byCoordinates: ({ system }: { system: string }) => `Placed by its own coordinates, ${system}.`,
  byDistance: ({ distanceM, bearingDeg }: { distanceM: number; bearingDeg: number }, f: Figures) =>
    `Scaled by a distance of ${f.tape(distanceM)}, which runs at ${f.bearing(bearingDeg)}. Move it where it belongs, or place it by points.`,
  whereReally: 'Where that place really is',
  done: 'Done placing',
  addPoint: 'Add a point',
  byPoints: 'Place by points',
  knownDistance: 'Known distance',
  move: 'Move',
  oddScale: ({ pixel }: OnePixel) =>
    `One pixel of this picture is ${pixel} of ground, which no picture of a property has. Check the figures that it was placed by.`,
  notDone: 'Not done yet.',
  oddScaleToBe: ({ pixel }: OnePixel) =>
    `With it one pixel would be ${pixel} of ground, which no picture of a property has. Check the coordinates and their units.`,
  leave: 'Keep it as it is',
  doIt: 'Do it all the same',
  fit: {
    label: 'Fit',
    similarity: 'Turn and scale (two points or more)',
    affine: 'Stretch too (three points or more)',
    hint: 'A scan or a photo from straight above needs turning and scaling; a stretched copy needs the other.',
  },
  rms: ({ rmsM, points }: { rmsM: number; points: number }, f: Figures) =>
    `${f.tape(rmsM)} RMS over ${f.number(points)} ${f.plural(points, { one: 'point', other: 'points' })}`,
  rmsUnchecked: ({ rmsM, points }: { rmsM: number; points: number }, f: Figures) =>
    `${f.tape(rmsM)} RMS over ${f.number(points)} ${f.plural(points, { one: 'point', other: 'points' })}. With no point to spare nothing checks it: add another.`,
  point: 'Point',
  place: 'Place',
  offBy: 'Off by',
  actions: 'What to do with it',
  suspect: 'Look at this one: the others agree without it.',
  takeOut: 'Take out',
  takePointOut: ({ number }: { number: number }, f: Figures) => `Take point ${f.number(number)} out`,
  orAtPost: 'Or at a post',
  choosePost: 'Select a post',
  swap: 'Swap them',
  openCover: 'Open “Place on earth”',
  placeProperty: 'Place the property by it',
  system: {
    of: {
      picture: 'Coordinate system of the picture',
      'elevation model': 'Coordinate system of the elevation model',
    },
    label: 'Its coordinates are',
    degrees: 'Longitude and latitude, degrees (WGS 84)',
    utm: 'UTM, in a zone that I type',
    own: 'Another: I paste its PROJ text',
    zone: 'Zone, such as 37 south',
    proj: 'PROJ text',
    goOn: 'Go on',
  },
};
