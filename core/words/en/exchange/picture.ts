import type { Figures } from '../../types.ts';

/** Of an elevation model no name is said. */
const fileNamed = (name: string | null) => name ?? 'The elevation model';

/** Why a picture can't be used, or where it lies not be told. */
export const picture = {
  systemNotKnown: ({ name, epsg }: { name: string | null; epsg: number }) =>
    `${fileNamed(name)} has coordinates in the system EPSG:${epsg}, which is not known here.`,
  systemNotSaid: ({ name }: { name: string | null }) =>
    `${fileNamed(name)} has coordinates, but does not say in which system they are.`,
  systemWithoutCode: ({ name, called }: { name: string | null; called: string }) =>
    `${fileNamed(name)} has coordinates in a system without a code${called === '' ? '' : ` (it calls it “${called}”)`}, so it is not known here which one it is.`,
  notOnEarth: ({ system }: { system: string }) =>
    `Its coordinates are no place on earth in ${system}. Select the coordinate system that the picture was made in.`,
  tooFine: ({ system, degrees }: { system: string; degrees: boolean }) =>
    `In ${system} one pixel of it would be less than a millimetre on the ground.${degrees ? ' Its coordinates look like degrees, longitude and latitude.' : ''} Select the coordinate system that the picture was made in.`,
  noSize: 'The picture has no size.',
  tooLarge: (
    { widthPx, heightPx, mostMillions }: { widthPx: number; heightPx: number; mostMillions: number },
    f: Figures,
  ) =>
    `The picture has ${f.number(widthPx)} × ${f.number(heightPx)} pixels. At most ${f.number(mostMillions)} million are taken: cut it in parts, or save it smaller.`,
  worldFile: {
    lines: ({ lines }: { lines: number }, f: Figures) =>
      `This world file can’t be used: it has ${f.number(lines)} lines with something on them; a world file has six.`,
    noNumber: ({ line, text }: { line: number; text: string }) =>
      `This world file can’t be used: line ${line} is “${text}”, not a number.`,
    noArea: 'This world file can’t be used: its first four numbers give a pixel no area.',
  },
  breaksOff: ({ percent }: { percent: number }, f: Figures) =>
    `The picture breaks off ${f.number(percent)} % of the way down. Save it anew, or fetch it again.`,
  damagedInMiddle: 'The picture is damaged in its middle. Save it anew, or fetch it again.',
  damaged: 'The picture is damaged. Save it anew, or fetch it again.',
};

/** What is the matter with a picture, inside of a sentence about it. */
export const pixels = {
  noJpeg: 'it does not begin like a JPEG picture',
  damagedHeader: 'its header is damaged',
  headerBreaksOff: 'its header breaks off',
  damagedTables: 'its tables are damaged',
  noSize: 'it has no size',
  noSizeInHeader: 'its header gives no size',
  coloursApart: 'its colours are stored one after the other',
  tablesMissing: 'tables are missing in it',
  progressive: 'it is stored in passes (“progressive”)',
  rare: 'it is stored in a rare way',
  moreThan8Bits: 'it has more than 8 bits a colour',
  colourMissing: 'its pixels lack a colour',
  noPalette: 'its table of colours is missing or too short',
  unknownColours: ({ photometric, bits }: { photometric: number; bits: number }) =>
    `its colours are kept in a way that is not known here (PhotometricInterpretation ${photometric}, ${bits} bits)`,
};
