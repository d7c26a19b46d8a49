import type { Xy } from '../../geometry/types.ts';
import type { MeasuredPath } from '../../shapes/measuredPath.ts';

export interface LevelledWay {
  readonly xy: readonly Xy[];
  readonly heightsM: readonly number[];
}

/**
 * A receiver's heights wander by metres, which would make every fence too long. Each is replaced by the mean of the
 * heights within so far of it along the way: an assumption of this project.
 */
const meanOverM = 30;

/** A way as its heights are used: as surveyed, or levelled out where a receiver measured them. */
export function levelledWay(
  { xy, stationsM }: Pick<MeasuredPath, 'xy' | 'stationsM'>,
  heightsM: readonly number[],
  byReceiver: boolean,
): LevelledWay {
  if (!byReceiver) return { xy, heightsM };
  /** Height times length of way, from the start to each position: the mean over a stretch is a difference of two. */
  const sums = [0];
  for (let i = 1; i < xy.length; i++) {
    const lengthM = stationsM[i]! - stationsM[i - 1]!;
    sums.push(sums[i - 1]! + (lengthM * (heightsM[i]! + heightsM[i - 1]!)) / 2);
  }
  const endM = stationsM.at(-1)!;
  let [low, high] = [0, 0];
  const levelled = stationsM.map((atM, i) => {
    // As far to either side, so that an even slope stays what it is up to the ends.
    const reachM = Math.min(meanOverM, atM, endM - atM);
    if (reachM === 0) return heightsM[i]!;
    while (low + 1 < stationsM.length - 1 && stationsM[low + 1]! <= atM - reachM) low++;
    while (low > 0 && stationsM[low]! > atM - reachM) low--;
    while (high + 1 < stationsM.length - 1 && stationsM[high + 1]! <= atM + reachM) high++;
    while (high > 0 && stationsM[high]! > atM + reachM) high--;
    const upTo = (segment: number, stationM: number) => {
      const lengthM = stationsM[segment + 1]! - stationsM[segment]!;
      const fraction = lengthM > 0 ? (stationM - stationsM[segment]!) / lengthM : 0;
      const heightM = heightsM[segment]! + fraction * (heightsM[segment + 1]! - heightsM[segment]!);
      return sums[segment]! + ((stationM - stationsM[segment]!) * (heightsM[segment]! + heightM)) / 2;
    };
    return (upTo(high, atM + reachM) - upTo(low, atM - reachM)) / (2 * reachM);
  });
  return { xy, heightsM: levelled };
}
