import { voltageAt } from '../../electrical/effects/weakestPlace.ts';
import type { Reading } from '../../model/things.ts';
import type { Spot } from '../../words/en/survey/spots.ts';
import { estimateOf } from './estimateOf.ts';
import { fencePlace } from './fencePlace.ts';
import { type ReadingPlace, readingPlace } from './readingPlace.ts';
import { type Estimate, notKnown, type Power } from './types.ts';

/** A reading beside what is estimated there with the switches as they then stood. */
export interface ReadingRow {
  readonly reading: Reading;
  /** Where it was read; null where no live wire is near. */
  readonly spot: Spot | null;
  readonly place: ReadingPlace | null;
  /** 0 where the place is then dead, null where it is not known. */
  readonly estimateV: number | null;
  /** Reading less estimate; null where either is not known. */
  readonly differenceV: number | null;
}

/** Every reading, the newest first. */
export function readingRows(power: Power): ReadingRow[] {
  const estimateAt = estimatesBySwitches(power);
  return [...power.project.reading.values()]
    .sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0))
    .map((reading) => readingRow(power, estimateAt(reading), reading));
}

/** Estimates for one way after another that the switches stood, each worked out once. */
export function estimatesBySwitches(power: Power): (reading: Reading) => Estimate {
  const kept = new Map<string, Estimate>();
  return ({ openSwitchIds }) => {
    const key = [...openSwitchIds].sort().join('\n');
    let estimate = kept.get(key);
    if (!estimate) {
      estimate = estimateOf(power, new Set(openSwitchIds));
      kept.set(key, estimate);
    }
    return estimate;
  };
}

function readingRow(power: Power, estimate: Estimate, reading: Reading): ReadingRow {
  const place = readingPlace(power, estimate, reading.at);
  if (!place) return { reading, spot: null, place, estimateV: null, differenceV: null };
  const supply = power.supplies[place.supply];
  const estimateV = estimateThere(power, estimate, place);
  const { spot } = fencePlace(power.project, power.survey, supply ?? { edgeOfSpan: [] }, place.place, estimateV ?? 0);
  const differenceV = estimateV === null || reading.voltageV === null ? null : reading.voltageV - estimateV;
  return { reading, spot, place, estimateV, differenceV };
}

function estimateThere({ supplies }: Power, estimate: Estimate, { supply, place }: ReadingPlace): number | null {
  if (supply === notKnown) return null;
  const circuit = supplies[supply]?.circuit;
  return circuit ? voltageAt(circuit, estimate.supplies[supply]!.voltages, place) : 0;
}
