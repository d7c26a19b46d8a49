import { along } from './find/along.ts';
import { crossings, left, stakeOut } from './find/crossings.ts';
import { dig } from './find/dig.ts';
import { search } from './find/search.ts';

/** The Find workspace. */
export const find = {
  what: 'What to find',
  views: { crossings: 'Crossings', dig: 'Check a dig', fault: 'Find a fault', along: 'Take along' },
  showOnMap: 'Show on the map',
  whatElse: 'What else lies here',
  close: 'Close',
  sheetMade: ({ fileName }: { fileName: string }) => `${fileName} is made.`,
  makingSheet: 'Making the PDF…',
  /** Beside the next place of a search, on the map. */
  onMap: {
    open: ({ name }: { name: string }) => `Open ${name}`,
    readAt: ({ name }: { name: string }) => `Read at ${name}`,
    readHere: 'Read here',
  },
  crossings,
  left,
  stakeOut,
  dig,
  search,
  along,
};
