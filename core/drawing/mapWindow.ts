import type { LocalPlane } from '../geometry/localPlane.ts';
import { clipPolylineToBox } from '../geometry/polyline.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import type { PaperBox, PaperPoint } from './displayList.ts';

/** Where a piece of the plane lies on a page, at true scale: 1 m on the ground is 1000 / `scaleDenominator` mm. */
export interface MapWindow {
  /** The map on the page. */
  readonly frame: PaperBox;
  readonly scaleDenominator: number;
  readonly mmPerM: number;
  readonly toPaper: (xy: Xy) => PaperPoint;
  readonly placeToPaper: (place: LonLat) => PaperPoint;
  /** Pieces of a path inside the frame, on paper. */
  readonly clip: (path: readonly Xy[]) => PaperPoint[][];
  readonly clipPaper: (path: readonly PaperPoint[]) => PaperPoint[][];
  /** Whether a point of the page lies in the frame, `rimMm` inside its edge. */
  readonly shows: (point: PaperPoint, rimMm?: number) => boolean;
}

/** `centre` (metres of the working plane) stands in the middle of `frame`; north is up. */
export function mapWindow(frame: PaperBox, centre: Xy, scaleDenominator: number, plane: LocalPlane): MapWindow {
  const mmPerM = 1000 / scaleDenominator;
  const middle: PaperPoint = [(frame[0] + frame[2]) / 2, (frame[1] + frame[3]) / 2];
  const toPaper = ([x, y]: Xy): PaperPoint => [
    middle[0] + (x - centre[0]) * mmPerM,
    middle[1] - (y - centre[1]) * mmPerM,
  ];
  const clipPaper = (path: readonly PaperPoint[]) => clipPolylineToBox(path, frame);
  return {
    frame,
    scaleDenominator,
    mmPerM,
    toPaper,
    placeToPaper: (place) => toPaper(plane.toXy(place)),
    clip: (path) => clipPaper(path.map(toPaper)),
    clipPaper,
    shows: ([x, y], rimMm = 0) =>
      x >= frame[0] + rimMm && x <= frame[2] - rimMm && y >= frame[1] + rimMm && y <= frame[3] - rimMm,
  };
}
