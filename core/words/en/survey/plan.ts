import type { Figures, Phrase } from '../../types.ts';

/** Names in a list before it is cut short. */
const mostNames = 4;

interface Bound {
  readonly cost: number;
  readonly costBound: number;
  readonly keepsLimits: boolean;
}

/** What is said of the suggested switches. */
export const plan = {
  /** What the plan comes to where it asks for no change. */
  settled: {
    overLimit: "The switches as drawn are the plan. It can't keep every section within the limits.",
    proven: 'The switches as drawn are the plan: no cheaper set keeps every section within the limits.',
    notProven:
      'The switches as drawn are the plan: no cheaper set that keeps every section within the limits was found.',
  },
  /** Whether it is proven, and if not, how far off it can be. */
  proof: {
    proven: ({ keepsLimits }: { keepsLimits: boolean }) => proven(keepsLimits),
    lookingForShorter: ({ keepsLimits, stopped }: { keepsLimits: boolean; stopped: boolean }) =>
      stopped
        ? `${proven(keepsLimits)} Stopped while looking for one as cheap whose longest section is shorter.`
        : `${proven(keepsLimits)} Looking for one as cheap whose longest section is shorter.`,
    notProven: (values: Bound, f: Figures) => `Not proven cheapest. ${bound(values, f)}`,
    stopped: (values: Bound, f: Figures) => `Stopped before the proof; a cheaper set may be found. ${bound(values, f)}`,
    looking: (values: Bound, f: Figures) => `Looking for a cheaper set. ${bound(values, f)}`,
  },
  /** What a change to it costs. */
  change: {
    keep: ({ name, cost }: { name: string; cost: number }, f: Figures) =>
      `Keeping ${name}: the plan does without it; it counts as much as ${f.number(cost, 1)} switches at a gateway.`,
    leaveOut: (
      {
        place,
        lengthM,
        overByM,
        overByGateways,
      }: { place: Phrase; lengthM: number; overByM: number; overByGateways: number },
      f: Figures,
    ) => {
      const over = overByM > 0 ? `over by ${f.length(overByM)}` : 'within the limit';
      const gateways = overByGateways > 0 ? `, ${gatewaysOf(overByGateways, f)} too many` : '';
      return `Without a switch at ${f.say(place)}: a section of ${f.length(lengthM)}, ${over}${gateways}.`;
    },
  },
  /** Fence that is over a limit whatever is chosen. */
  overLimit: (
    {
      lines,
      stretches,
      ...each
    }: {
      lines: readonly string[];
      stretches: number;
      lengthM: number;
      gateways: number;
      overByM: number;
      overByGateways: number;
      maxGateways: number | null;
      barred: readonly Phrase[];
    },
    f: Figures,
  ) => {
    const where = lines.length === 0 ? 'Here' : f.list(lines, mostNames);
    const what = stretches > 1 ? `${f.number(stretches)} stretches` : 'a stretch';
    return `${where}: ${what} ${howFar(each, stretches > 1, f)}, ${whyNot(each.barred, f)}.`;
  },
};

function proven(keepsLimits: boolean): string {
  return keepsLimits
    ? 'Proven: no set of switches costs less within these limits.'
    : 'No set of switches keeps everything within these limits. Proven for the rest: none costs less.';
}

function bound({ cost, costBound, keepsLimits }: Bound, f: Figures): string {
  const off = f.number(cost - costBound, 1);
  const share = f.number((100 * (cost - costBound)) / cost, 0);
  const text = `No set can cost less than ${f.number(costBound, 1)}: this one is at most ${off} (${share} % of its cost) above.`;
  return keepsLimits ? text : `${text} No set of switches keeps everything within these limits.`;
}

interface Over {
  readonly lengthM: number;
  readonly gateways: number;
  readonly overByM: number;
  readonly overByGateways: number;
  readonly maxGateways: number | null;
}

/** "of 1.20 km each, 900 m over the limit". */
function howFar(
  { lengthM, gateways, overByM, overByGateways, maxGateways }: Over,
  several: boolean,
  f: Figures,
): string {
  const each = several ? ' each' : '';
  const long = `of ${f.length(lengthM)}${each}, ${f.length(overByM)} over the limit`;
  const many = `with ${gatewaysOf(gateways, f)}${each}, the limit being ${f.number(maxGateways ?? 0)}`;
  return [...(overByM > 0 ? [long] : []), ...(overByGateways > 0 ? [many] : [])].join(', and ');
}

function whyNot(barred: readonly Phrase[], f: Figures): string {
  if (barred.length === 0) return 'without a place for a switch';
  return `with a switch ruled out at ${f.list(barred.map(f.say), mostNames)}`;
}

function gatewaysOf(count: number, f: Figures): string {
  return `${f.number(count, 0)} ${f.plural(count, { one: 'gateway', other: 'gateways' })}`;
}
