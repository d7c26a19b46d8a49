import { feedingWays } from '../sectioning/normallyOpen.ts';
import type { SearchNetwork } from './types.ts';

/** The sections as a tree hanging from the energiser, numbered so that every section comes after the one that feeds it. */
export interface FeedTree {
  readonly ids: readonly string[];
  /** Whole numbers, in proportion to the likelihood of a fault. */
  readonly weight: Float64Array;
  /** Weight units that one unit of the caller's weights is. */
  readonly weightScale: number;
  /** -1 for the section at the energiser. */
  readonly parent: Int32Array;
  /** The switch by which each section is fed; '' for the section at the energiser. */
  readonly switchId: readonly string[];
  /** Whole numbers: cost of a test at that switch. */
  readonly cost: Float64Array;
  readonly costScale: number;
  readonly openFirst: readonly string[];
  readonly unfed: readonly string[];
}

const LARGEST_SUM = 2 ** 52;

/**
 * Rings are opened first: the ring switches that stand open stay so, and of what rings are left those switches are
 * opened that lie on no shortest way from the energiser (see feedingWays).
 * @throws RangeError when the input makes no sense.
 */
export function feedTree(network: SearchNetwork): FeedTree {
  const standOpen = new Set(network.normallyOpen ?? []);
  const closed = network.switches.filter(({ id }) => !standOpen.has(id));
  for (const id of standOpen) {
    if (!network.switches.some((one) => one.id === id))
      throw new RangeError(`normallyOpen names switch ${id}, which is not among the switches.`);
  }
  const { feeds, normallyOpen, unfed } = feedingWays(network.sections, closed, network.source);
  const sectionOf = new Map(network.sections.map((section) => [section.id, section]));
  const switchOf = new Map(network.switches.map((one) => [one.id, one]));
  const numberOf = new Map(feeds.map(({ section }, n) => [section, n]));
  const weights = feeds.map(({ section }) => {
    const { id, lengthM, weight = lengthM } = sectionOf.get(section)!;
    if (!isAtLeastZero(weight))
      throw new RangeError(`Section ${id}: weight is ${weight}; give a number of at least 0.`);
    return weight;
  });
  const costs = feeds.map(({ through }) => {
    if (through === null) return 0;
    const { cost = 1 } = switchOf.get(through)!;
    if (!isAtLeastZero(cost)) throw new RangeError(`Switch ${through}: cost is ${cost}; give a number of at least 0.`);
    return cost;
  });
  // Sections that are all unlikely are all equally likely.
  const likely = weights.some((weight) => weight > 0) ? weights : weights.map(() => 1);
  const total = likely.reduce((sum, weight) => sum + weight, 0);
  const costScale = wholeScale(costs, 1);
  const mostCost = costs.reduce((sum, cost) => sum + cost * costScale, 1);
  const weightScale = wholeScale(likely, total * Math.max(mostCost, feeds.length));
  return {
    ids: feeds.map(({ section }) => section),
    weight: Float64Array.from(likely, (weight) => Math.round(weight * weightScale)),
    weightScale,
    parent: Int32Array.from(feeds, ({ from }) => (from === null ? -1 : numberOf.get(from)!)),
    switchId: feeds.map(({ through }) => through ?? ''),
    cost: Float64Array.from(costs, (cost) => Math.round(cost * costScale)),
    costScale,
    openFirst: [...network.switches.filter(({ id }) => standOpen.has(id)).map(({ id }) => id), ...normallyOpen],
    unfed,
  };
}

/** A power of ten that makes the values whole, but no more than keeps `largest` whole too. */
function wholeScale(values: readonly number[], largest: number): number {
  let scale = 1;
  while (scale < 1e6 && 10 * scale * largest < LARGEST_SUM && values.some((value) => !isWhole(value * scale))) {
    scale *= 10;
  }
  return scale;
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) <= 1e-9 * Math.max(1, Math.abs(value));
}

function isAtLeastZero(value: number): boolean {
  return value >= 0 && Number.isFinite(value);
}
