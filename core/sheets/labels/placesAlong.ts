import { pointAtStation } from '../../geometry/plane/pointAtStation.ts';
import type { PaperPoint } from '../displayList.ts';
import { paperLengthMm } from '../map/marksAlong.ts';
import { type TextStyle, text } from '../paint.ts';
import { paperDirection, paperShift } from '../signs/sign.ts';
import { face, mmPerPt } from '../style.ts';
import type { MeasureText } from '../words.ts';
import type { LabelPlace } from './label.ts';

const haloMm = 0.35;

/** Turn of words that run along a direction and can be read without turning the sheet far: -90 to 90 degrees. */
function readableTurn(u: PaperPoint): number {
  const degrees = (Math.atan2(u[1], u[0]) * 180) / Math.PI;
  if (degrees > 90) return degrees - 180;
  return degrees <= -90 ? degrees + 180 : degrees;
}

/** Places for words along the straights of a line, above it or below it; those straights that are long enough, longest first. */
export function placesAlongLine(
  paths: readonly (readonly PaperPoint[])[],
  words: string,
  style: TextStyle,
  offMm: number,
  measure: MeasureText,
): LabelPlace[] {
  const widthMm = measure(words, style.font ?? 'regular', style.sizePt);
  const straights = paths
    .flatMap((path) => path.slice(1).map((to, i) => [path[i]!, to] as const))
    .map(([from, to]) => ({ from, to, lengthMm: Math.hypot(to[0] - from[0], to[1] - from[1]) }))
    .filter(({ lengthMm }) => lengthMm >= widthMm + 1)
    .sort((a, b) => b.lengthMm - a.lengthMm)
    .slice(0, 4);
  const capital = face.capital * style.sizePt * mmPerPt;
  return straights.flatMap(({ from, to, lengthMm }, rank) => {
    const turn = readableTurn(paperDirection(from, to));
    const reading: PaperPoint = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
    const slack = (lengthMm - widthMm) / 2 / lengthMm;
    return [0, 0.5, -0.5, 0.95, -0.95].flatMap((slide) => {
      const share = 0.5 + slide * slack;
      const on: PaperPoint = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
      return ([1, -1] as const).map((side): LabelPlace => {
        const baseline = paperShift(on, reading, 0, side === 1 ? offMm : -offMm - capital);
        const item = text(words, baseline, { ...style, align: 'centre', rotationDeg: turn, haloMm });
        return { texts: [item], leader: null, cost: rank * 0.3 + Math.abs(slide) * 0.3 + (side === 1 ? 0 : 0.2) };
      });
    });
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
  const length = paperLengthMm(path);
  const capital = face.capital * style.sizePt * mmPerPt;
  const stations = [0, 0.2, -0.2, 0.4, -0.4, 0.6, -0.6, 0.8, -0.8, 1, -1]
    .map((slide) => ({ slide, station: atMm + slide * slideMm }))
    .filter(({ station }) => station >= 1 && station <= length - 1);
  return stations.map(({ slide, station }): LabelPlace => {
    const { point, segment } = pointAtStation(path, station);
    const turn = turned ? readableTurn(paperDirection(path[segment]!, path[segment + 1]!)) : 0;
    const reading: PaperPoint = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
    const baseline = paperShift(point, reading, 0, -capital / 2);
    const item = text(words, baseline, { ...style, align: 'centre', rotationDeg: turn, haloMm: 0.6 });
    return { texts: [item], leader: null, cost: Math.abs(slide) };
  });
}
