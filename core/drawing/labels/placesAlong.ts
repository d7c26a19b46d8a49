import { pointAtStation, slicePolyline } from '../../geometry/polyline.ts';
import { largestOf, leastOf } from '../../model/extremes.ts';
import type { PaperPoint } from '../displayList.ts';
import { type TextStyle, text } from '../paint.ts';
import { paperDirection, paperLeft, paperShift } from '../signs/sign.ts';
import { pathLength } from '../strokes/marksAlong.ts';
import { face, mmPerPt } from '../style.ts';
import type { MeasureText } from '../words.ts';
import type { LabelPlace } from './label.ts';

const halo = 0.35;

/** Turn of words that run along a direction and can be read without turning the sheet far: -90 to 90 degrees. */
export function readableTurn(u: PaperPoint): number {
  const degrees = (Math.atan2(u[1], u[0]) * 180) / Math.PI;
  if (degrees > 90) return degrees - 180;
  return degrees <= -90 ? degrees + 180 : degrees;
}

/** A line bends no further than this from the words that run along it. */
const mostBendMm = 1.2;
const stationsTried = 25;

/** Places for words along a line, above it or below it, where it is nearly straight; the middle of the longest piece first. */
export function placesAlongLine(
  paths: readonly (readonly PaperPoint[])[],
  words: string,
  style: TextStyle,
  offMm: number,
  measure: MeasureText,
): LabelPlace[] {
  const widthMm = measure(words, style.font ?? 'regular', style.sizePt);
  const longest = paths
    .map((path) => ({ path, lengthMm: pathLength(path) }))
    .filter(({ lengthMm }) => lengthMm >= widthMm + 1)
    .sort((a, b) => b.lengthMm - a.lengthMm)
    .slice(0, 4);
  return longest.flatMap(({ path, lengthMm }, rank) => {
    const room = lengthMm - widthMm;
    return Array.from({ length: stationsTried }, (_, i) => {
      const share = i / (stationsTried - 1);
      const cost = rank * 0.3 + Math.abs(share - 0.5);
      return besideStretch(path, share * room, widthMm, cost, { words, style, offMm });
    }).flat();
  });
}

interface AlongText {
  readonly words: string;
  readonly style: TextStyle;
  readonly offMm: number;
}

/** The words above and below the stretch of a path that begins at `fromMm`; none where it bends too far from its chord. */
function besideStretch(
  path: readonly PaperPoint[],
  fromMm: number,
  widthMm: number,
  cost: number,
  { words, style, offMm }: AlongText,
): LabelPlace[] {
  const stretch = slicePolyline(path, fromMm, fromMm + widthMm);
  const [from, to] = [stretch[0]!, stretch.at(-1)!];
  const turn = readableTurn(paperDirection(from, to));
  const reading: PaperPoint = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const left = paperLeft(reading);
  const middle: PaperPoint = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const rises = stretch.map(([x, y]) => (x - middle[0]) * left[0] + (y - middle[1]) * left[1]);
  const [below, above] = [leastOf(rises), largestOf(rises)];
  if (above - below > mostBendMm) return [];
  const capital = face.capital * style.sizePt * mmPerPt;
  return [above + offMm, below - offMm - capital].map((off, side): LabelPlace => {
    const baseline = paperShift(middle, reading, 0, off);
    const item = text(words, baseline, { ...style, align: 'centre', rotationDeg: turn, halo });
    return { texts: [item], leader: null, cost: cost + side * 0.2 + (above - below) * 0.3 };
  });
}

/** Places for a word set into a line, its middle on the line: near the station `atMm`, sliding up to `slideMm`. */
export function placesOnLine(
  path: readonly PaperPoint[],
  words: string,
  style: TextStyle,
  atMm: number,
  slideMm: number,
  turned: boolean,
): LabelPlace[] {
  const length = pathLength(path);
  const capital = face.capital * style.sizePt * mmPerPt;
  const stations = [0, 0.2, -0.2, 0.4, -0.4, 0.6, -0.6, 0.8, -0.8, 1, -1]
    .map((slide) => ({ slide, station: atMm + slide * slideMm }))
    .filter(({ station }) => station >= 1 && station <= length - 1);
  return stations.map(({ slide, station }): LabelPlace => {
    const { point, segment } = pointAtStation(path, station);
    const turn = turned ? readableTurn(paperDirection(path[segment]!, path[segment + 1]!)) : 0;
    const reading: PaperPoint = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
    const baseline = paperShift(point, reading, 0, -capital / 2);
    const item = text(words, baseline, { ...style, align: 'centre', rotationDeg: turn, halo: 0.6 });
    return { texts: [item], leader: null, cost: Math.abs(slide) };
  });
}
