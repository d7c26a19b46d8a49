import type { Figures, Phrase } from '../../types.ts';

type At = { readonly path: string };

/** What the host says of pictures and map files under the drawing. */
export const maps = {
  picture: {
    message: ({ why }: { why: Phrase }, f: Figures) => `The picture can't be taken in: ${f.say(why)}.`,
    remedy: 'Bring it in again.',
    tilesMissing: ({ done, all }: { done: number; all: number }) => `${done} of ${all} tiles of the picture have come`,
    noSuchTile: ({ level, column, row }: { level: number; column: number; row: number }) =>
      `there is no tile ${level}/${column}/${row} in a picture of this size`,
    smaller: 'Bring in a smaller picture.',
    notInEdit: 'The edit does not show the picture.',
    givenUp: 'This picture is not being brought in any more.',
  },
  notTiles: {
    message: ({ path, why }: At & { why: Phrase }, f: Figures) => `${path} can't be used as a map: ${f.say(why)}.`,
    remedy: 'Select an MBTiles file (.mbtiles) with picture tiles.',
    noTables: 'it has not the tables of an MBTiles file',
    noFile: 'it is no file but a folder, a pipe or a device',
    noDatabase: 'it is no SQLite database',
    noTiles: 'it holds no tiles',
    zooms: 'its zoom levels make no sense',
  },
  otherTiles: {
    message: ({ path, format }: At & { format: string | null }) =>
      `${path} holds tiles of the kind “${format ?? 'not known'}”. Only pictures (PNG, JPEG, WebP) can be laid under the drawing.`,
    remedy: 'Make a raster MBTiles file of the map.',
  },
  link: {
    message: ({ path }: At) => `${path} is a link to another place.`,
    remedy: 'Open it if you know the map.',
  },
  named: {
    message: ({ path }: At) => `${path} was named by the project file and was not opened on this machine before.`,
    remedy: 'Open it if you know the map.',
  },
  silent: {
    late: ({ path, waitedS }: At & { waitedS: number }, f: Figures) =>
      `${path} does not answer (it was waited for ${f.number(waitedS)} s), so it is left out.`,
    brokeOff: ({ path }: At) => `${path} does not answer (reading it broke off), so it is left out.`,
    remedy: 'Try again, or delete this map if the file is not from someone you know.',
  },
  elsewhere: {
    message: ({ path }: At) => `${path} lies on another computer, so it is not opened.`,
    remedy: 'Copy the map to this computer, or give the shared folder a drive letter and select the map there.',
  },
  notTilePath: {
    message: ({ path }: At) => `${path} is not the whole path of an MBTiles file.`,
    remedy: 'Select it in the list.',
  },
  /** What the answer of a map file lacks, as the check of it says. */
  senseless: {
    message: ({ reason }: { reason: string }) => `The file makes no sense: ${reason}.`,
    remedy: 'Select another file.',
  },
};
