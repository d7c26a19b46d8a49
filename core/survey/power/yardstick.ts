import type { Voltages } from '../../electrical/voltageResult.ts';
import type { Xy } from '../../geometry/types.ts';
import { xyDistanceM } from '../../geometry/vector.ts';
import { largestOf } from '../../model/extremes.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { Reading } from '../../model/things.ts';
import type { Limits, Yardstick } from '../../model/yardstick.ts';
import { feedOf } from '../../network/feed.ts';
import type { Network } from '../../network/types.ts';
import { isPlaceOnEarth } from '../../shapes/workingPlane.ts';
import { estimateOf, voltagesWith } from './estimateOf.ts';
import { READING_REACH_M, readingPlace } from './readingPlace.ts';
import type { Estimate, Power } from './types.ts';

/**
 * Of what a place usually reads: from this share on a reading is good, under the other it is low, between them doubtful.
 * On a strong energiser a drop to about half is a fault although stock would still be held; weather and growth take a
 * fifth or so. An assumption of this project; common practice, no source.
 */
export const goodShare = 0.75;
export const lowShare = 0.6;
/** Where nothing tells what is usual: of what holds the stock, a reading under this share is low. The same assumption. */
const lowShareOfStock = 0.75;
/** What is usual is the middle one of the last so many readings; an assumption of this project. */
const readingsCounted = 5;
/** Two places nearer than this are one: the sides of a switch. */
const samePlaceM = 1;

/** One way for the switches to stand, with the estimates that are asked of it. */
export interface Standing {
  /** All switches that stand open, those that normally do too. */
  readonly openIds: ReadonlySet<string>;
  /** The estimate at a network node; null where it is dead or not known. */
  readonly voltsAt: (node: number) => number | null;
  /** Of everything. */
  readonly estimate: () => Estimate;
}

/** What is asked of many places is worked out once. */
export function standingOf(power: Power, openIds: ReadonlySet<string>): Standing {
  const known = new Map<number, Voltages>();
  let whole: Estimate | null = null;
  return {
    openIds,
    voltsAt(node) {
      const index = power.supplyOfNode[node]!;
      const supply = power.supplies[index];
      if (!supply) return null;
      const voltages = known.get(index) ?? voltagesWith(supply, openIds, power.normallyOpen);
      known.set(index, voltages);
      const volts = voltages.reached[node] === 1 ? voltages.nodeVoltageV[node]! : 0;
      return volts > 0 ? volts : null;
    },
    estimate: () => (whole ??= estimateOf(power, openIds)),
  };
}

/** A reading to be judged. */
export interface PlaceAsked {
  /** Network node where it is taken. */
  readonly node: number;
  readonly standing: Standing;
  /** The test run that it is part of: the other readings of that run are no yardstick for it. */
  readonly runId?: string;
}

/**
 * What a reading is judged by: what was read there before with the same switches open, while nothing was known to be
 * wrong; else the estimate there with those switches open; never less than what holds the stock.
 */
export function yardstickAt(power: Power, asked: PlaceAsked): Yardstick {
  const { stockMinimumV } = propertyOf(power.project).power;
  const estimatedV = asked.standing.voltsAt(asked.node);
  const past = usualReading(power, asked, estimatedV);
  if (past) {
    const { date, voltageV } = past;
    return { usualV: voltageV, by: 'reading', readOn: date.slice(0, 10), ...limitsFor(stockMinimumV, voltageV) };
  }
  if (estimatedV === null) return stockYardstick(power.project);
  return { usualV: estimatedV, by: 'estimate', ...limitsFor(stockMinimumV, estimatedV) };
}

/** Where nothing tells what is usual. */
export function stockYardstick(project: Project): Yardstick {
  return { usualV: null, by: 'stock', ...limitsFor(propertyOf(project).power.stockMinimumV, null) };
}

/** Good is never less than what holds the stock, and low never less than what is far from holding it. */
export function limitsFor(stockMinimumV: number, usualV: number | null): Limits {
  const usual = usualV ?? 0;
  return {
    goodFromV: Math.max(stockMinimumV, toTenthKv(usual * goodShare)),
    lowBelowV: Math.max(toTenthKv(stockMinimumV * lowShareOfStock), toTenthKv(usual * lowShare)),
  };
}

/** As voltages are shown and read. */
function toTenthKv(volts: number): number {
  return Math.round(volts / 100) * 100;
}

type VoltReading = Reading & { readonly voltageV: number };

/** The middle one of the last readings that may be taken for usual; null where there is none. */
function usualReading(power: Power, asked: PlaceAsked, estimatedV: number | null): VoltReading | null {
  const { stockMinimumV } = propertyOf(power.project).power;
  let kept: VoltReading[] = [];
  const inOrder = readingsThere(power, asked).sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  for (const reading of inOrder) {
    const { voltageV } = reading;
    const bestV = Math.max(0, largestOf(kept.map((other) => other.voltageV)));
    const isLow = voltageV < stockMinimumV || voltageV < bestV * goodShare;
    // Far off the estimate it was low then, or it was another fence: more or less of it, another energiser.
    const isOff = estimatedV !== null && (voltageV < estimatedV * lowShare || voltageV > estimatedV / goodShare);
    if (!isLow && !isOff) kept = [...kept, reading].slice(-readingsCounted);
  }
  return kept.toSorted((a, b) => a.voltageV - b.voltageV)[Math.floor(kept.length / 2)] ?? null;
}

/** Readings at the place with the same switches open, taken while nothing was known to be wrong. */
function readingsThere(power: Power, asked: PlaceAsked): VoltReading[] {
  const { project, survey } = power;
  const { network } = survey;
  const there = network.nodes[asked.node]!.xy;
  const isNear = (xy: Xy, withinM: number) => xyDistanceM(xy, there) <= withinM;
  const isTroubled = troubledDays(power, asked.node);
  const opened = createOpened(network);
  return [...project.reading.values()].flatMap((reading): VoltReading[] => {
    const { voltageV, date, openSwitchIds, at } = reading;
    if (voltageV === null || isTroubled(date) || !isSound(project, reading, asked.runId)) return [];
    if (!isPlaceOnEarth(at) || !isNear(survey.plane.toXy(at), READING_REACH_M + samePlaceM)) return [];
    const wanted = opened(asked.standing.openIds);
    if (wanted === null || opened(new Set(openSwitchIds)) !== wanted) return [];
    const place = readingPlace(power, asked.standing.estimate(), at)?.place;
    const isThere = place?.on === 'node' && isNear(network.nodes[place.node]!.xy, samePlaceM);
    return isThere ? [{ ...reading, voltageV }] : [];
  });
}

/** Not part of this run, nor of a section that failed or was not done with in its own. */
function isSound(project: Project, { runId, section }: Reading, exceptRunId: string | undefined): boolean {
  if (runId === undefined) return true;
  if (runId === exceptRunId) return false;
  const run = project.testRun.get(runId);
  return !run || run.results.some((result) => result.section === section && result.outcome === 'passed');
}

/** Days of searches for a fault on the same supply, first and last included: what was read then is no yardstick. */
function troubledDays({ project, supplies, supplyOfNode }: Power, node: number): (date: string) => boolean {
  const energiserId = supplies[supplyOfNode[node]!]?.energiser.id;
  const searches = [...project.faultHunt.values()].filter(
    (search) => !energiserId || search.energiserId === energiserId,
  );
  const spans = searches.map(({ startedAt, end }) => [startedAt.slice(0, 10), end?.at.slice(0, 10) ?? '9999'] as const);
  return (date) => spans.some(([first, last]) => first <= date.slice(0, 10) && date.slice(0, 10) <= last);
}

/**
 * Tells ways for the switches to stand apart: those that are open and have a live side, as text; null where one of them is
 * gone from the drawing, so that nobody can say how things stood.
 */
function createOpened(network: Network): (openIds: ReadonlySet<string>) => string | null {
  const known = new Map<string, string | null>();
  return (openIds) => {
    const key = [...openIds].sort().join('\n');
    let opened = known.get(key);
    if (opened === undefined) {
      opened = [...openIds].every((id) => network.edgeOfSwitch.has(id)) ? liveSided(network, openIds) : null;
      known.set(key, opened);
    }
    return opened;
  };
}

function liveSided(network: Network, openIds: ReadonlySet<string>): string {
  const { positionOf } = feedOf(network, (index) => {
    const edge = network.edges[index]!;
    return edge.kind !== 'switch' || !openIds.has(edge.switchId);
  });
  const sided = [...openIds].filter((id) => {
    const { from, to } = network.edges[network.edgeOfSwitch.get(id)!]!;
    return positionOf[from] !== -1 || positionOf[to] !== -1;
  });
  return sided.sort().join('\n');
}

/** The side of a switch that has current as the switches stand: of two, the one that reads more. */
export function nodeAtSwitch({ survey: { network } }: Power, switchId: string, { voltsAt }: Standing): number | null {
  const edge = network.edges[network.edgeOfSwitch.get(switchId) ?? -1];
  if (!edge) return null;
  return (voltsAt(edge.to) ?? -1) > (voltsAt(edge.from) ?? -1) ? edge.to : edge.from;
}
