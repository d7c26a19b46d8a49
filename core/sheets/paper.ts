import type { SheetOptions } from '../api/sheetOptions.ts';
import type { PaperBox } from '../drawing/displayList.ts';
import { pageMarginMm } from '../drawing/style.ts';

/** ISO 216, short side first, millimetres. */
const paperSizes = { A4: [210, 297], A3: [297, 420] } as const;

/** Room for the coordinates between the map and the sheet's frame. */
export const coordinateBandMm = 4.5;

/** How a map sheet is shared out. */
export interface SheetFormat {
  readonly widthMm: number;
  readonly heightMm: number;
  /** The ruled frame around everything. */
  readonly frame: PaperBox;
  /** The map itself. */
  readonly map: PaperBox;
  /** Columns for legend, cautions and title, in reading order; the title block stands at the foot of the last. */
  readonly columns: readonly PaperBox[];
}

type PaperChoice = Pick<SheetOptions, 'paper' | 'orientation'>;

export function paperSizeMm({ paper, orientation }: PaperChoice): readonly [widthMm: number, heightMm: number] {
  const [short, long] = paperSizes[paper];
  return orientation === 'portrait' ? [short, long] : [long, short];
}

/** Landscape: the columns stand to the right of the map. Portrait: below it. */
export function sheetFormat(choice: PaperChoice): SheetFormat {
  const [widthMm, heightMm] = paperSizeMm(choice);
  const frame: PaperBox = [pageMarginMm, pageMarginMm, widthMm - pageMarginMm, heightMm - pageMarginMm];
  const [left, top, right, bottom] = frame;
  const band = coordinateBandMm;
  if (choice.orientation === 'landscape') {
    const panelLeft = right - 62;
    const map: PaperBox = [left + band, top + band, panelLeft - band, bottom - band];
    return { widthMm, heightMm, frame, map, columns: [[panelLeft, top, right, bottom]] };
  }
  const panelTop = bottom - (choice.paper === 'A4' ? 74 : 78);
  const map: PaperBox = [left + band, top + band, right - band, panelTop - band];
  const count = choice.paper === 'A4' ? 3 : 4;
  const columnWidth = (right - left) / count;
  const columns = Array.from({ length: count }, (_, i): PaperBox => {
    return [left + i * columnWidth, panelTop, left + (i + 1) * columnWidth, bottom];
  });
  return { widthMm, heightMm, frame, map, columns };
}
