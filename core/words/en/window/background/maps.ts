import type { Figures } from '../../../types.ts';

type Named = { readonly name: string };

/** The list of background maps, and one of them. */
export const maps = {
  list: {
    caption: 'Background maps, the uppermost first',
    empty:
      'None yet. Bring in an aerial photo, a scanned plan or a surveyor’s GeoTIFF (JPEG, PNG, WebP, TIFF; with a world file if there is one), or add an offline map file (MBTiles).',
    placed: 'Placed',
    shown: 'Shown',
    hidden: 'hidden',
    opening: 'opening…',
    notOpened: 'not opened yet',
    leftOut: 'left out',
    percent: ({ percent }: { percent: number }, f: Figures) => `${f.number(percent)} %`,
    byTiles: 'by its tiles',
    byCoordinates: ({ system }: { system: string }) => `by coordinates, ${system}`,
    byDistance: 'by a distance',
    byEye: 'by eye only',
    byPoints: ({ points, rmsM }: { points: number; rmsM: number }, f: Figures) =>
      `${f.number(points)} ${f.plural(points, { one: 'point', other: 'points' })}, RMS ${f.tape(rmsM)}`,
  },
  add: {
    picture: 'Bring in a picture',
    mapFile: 'Add an offline map file',
    pictureFiles: 'Pictures and world files',
    whichFile: 'An MBTiles file with picture tiles. It stays where it is and is only read, so keep it in that place.',
    opening: 'Opening the map…',
    noFiles: 'No MBTiles files in this folder.',
    thenAdd: 'Then add the map.',
  },
  notShown: ({ count }: { count: number }, f: Figures) =>
    `${f.plural(count, { one: 'An offline map is', other: `${f.number(count)} offline maps are` })} not shown: see Background maps.`,
  details: {
    picture: (
      {
        fileName,
        widthPx,
        heightPx,
        pixel,
      }: { fileName: string; widthPx: number; heightPx: number; pixel: string | null },
      f: Figures,
    ) =>
      `${fileName}, ${f.number(widthPx, 0)} × ${f.number(heightPx, 0)} pixels${pixel === null ? '' : `; one pixel is ${pixel}`}. It lies inside the property’s file.`,
    opening: ({ fileName }: { fileName: string }) => `Opening ${fileName}…`,
    tiles: ({ path }: { path: string }) =>
      `Map tiles, read from ${path}. The file is not part of the property: keep it there.`,
    mapFile: 'Map file',
    named: 'This map file was named by the project file; open it?',
    nothingRead: 'Nothing of it has been read yet. Leave it if you don’t know the map.',
    open: 'Open the map',
    shown: 'Shown',
    opacity: ({ percent }: { percent: number }, f: Figures) => `Opacity ${f.number(percent)} %`,
    over: 'Over the next',
    under: 'Under the next',
  },
  /** What one pixel covers, where that is next to nothing. */
  underMm: ({ mm }: { mm: number }, f: Figures) => `under ${f.number(mm)} mm`,
  mm: ({ mm, decimals }: { mm: number; decimals: number }, f: Figures) => `${f.number(mm, decimals)} mm`,
  /** Steps of undo. */
  steps: {
    lay: ({ name }: Named) => `Lay ${name} under the drawing`,
    show: ({ name }: Named) => `Show ${name}`,
    hide: ({ name }: Named) => `Hide ${name}`,
    rename: ({ name }: Named) => `Rename ${name}`,
    note: ({ name }: Named) => `Change the note of ${name}`,
    opacity: ({ name }: Named) => `Change the opacity of ${name}`,
    raise: ({ name }: Named) => `Raise ${name}`,
    lower: ({ name }: Named) => `Lower ${name}`,
    move: ({ name }: Named) => `Move ${name}`,
    place: ({ name }: Named) => `Place ${name}`,
    scale: ({ name }: Named) => `Scale ${name}`,
    placeProperty: 'Place the property on the earth',
  },
};
