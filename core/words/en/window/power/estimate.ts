import type { Figures } from '../../../types.ts';
import { type Stood, standing } from '../../power/estimate.ts';
import { atSpot, type Spot } from '../../survey/spots.ts';

/** The estimate: along the way, on each fence, with each switch turned, and what would raise it. */
export const estimate = {
  registers: 'Registers',
  register: {
    profile: 'Profile',
    voltages: 'Fences',
    improvements: 'What would raise the voltage',
    switches: 'Switches',
    supply: 'Energiser',
    earth: 'Earth',
    basics: 'Stock, growth, wire',
    readings: 'Readings',
  },
  /** What figures are of. */
  figures: { weakest: 'at the weakest place', energiser: 'at the energiser', tooLow: 'too low, or dead' },
  none: 'none',
  caution:
    "Every voltage here is an estimate: the peak of a short pulse, taken as resistive, from the wire, the growth and the energiser's label. What a tester reads on the fence goes before it.",
  nothingMissing: 'Nothing that the estimate needs is missing.',
  /** 0 V. */
  dead: '0 V, dead',
  gain: ({ volts }: { volts: number }, f: Figures) => (volts > 0 ? `+${f.volts(volts)}` : f.volts(volts)),
  show: {
    label: 'Show',
    hint: 'To see what it would do; nothing in the drawing changes.',
    allOn: 'All switches on',
    normal: 'Switches as they normally stand',
    withOn: ({ name }: { name: string }) => `With ${name} on`,
    withOff: ({ name }: { name: string }) => `With ${name} off`,
  },
  profile: {
    none: 'No fence is live, so there is no way to show.',
    title: ({ spot, stood }: { spot: Spot; stood: Stood | null }, f: Figures) =>
      stood
        ? `From the energiser to the weakest place, ${atSpot(spot, f)}, ${standing(stood, f)}`
        : `From the energiser to the weakest place, ${atSpot(spot, f)}`,
    readAlong: 'Read along the way',
    here: ({ distanceM, volts }: { distanceM: number; volts: number }, f: Figures) =>
      `${f.length(distanceM)} from the energiser: about ${f.volts(volts)}`,
    hereTooLow: ({ distanceM, volts }: { distanceM: number; volts: number }, f: Figures) =>
      `${f.length(distanceM)} from the energiser: about ${f.volts(volts)}, too low`,
    table: 'The same as a table',
    place: 'Place',
    along: 'Along the way',
    estimate: 'Estimate',
    energiser: 'the energiser',
    weakest: ({ spot }: { spot: Spot }, f: Figures) => `the weakest place, ${atSpot(spot, f)}`,
    holds: ({ volts }: { volts: number }, f: Figures) => `${f.volts(volts)} holds the stock`,
    plot: (
      { lengthM, firstV, lastV, leastV }: { lengthM: number; firstV: number; lastV: number; leastV: number },
      f: Figures,
    ) =>
      `Estimated voltage along ${f.length(lengthM)} of fence: ${f.volts(firstV)} at the energiser, ${f.volts(lastV)} at the weakest place; ${f.volts(leastV)} holds the stock.`,
    axis: ({ unit }: { unit: string }) => `from the energiser, ${unit}`,
  },
  voltages: {
    caption: ({ stood }: { stood: Stood | null }, f: Figures) =>
      stood ? `Estimated peak on each live fence, ${standing(stood, f)}` : 'Estimated peak on each live fence',
    empty: 'No live fence is drawn yet.',
    fence: 'Fence',
    start: 'Start',
    end: 'End',
    lowest: 'Lowest',
    tooLow: ({ belowM }: { belowM: number }, f: Figures) => `✕ ${f.length(belowM)} too low`,
  },
  improvements: {
    what: 'what would raise the voltage',
    none: 'No fence is live, so there is no voltage.',
    caption: ({ volts, spot }: { volts: number; spot: Spot }, f: Figures) =>
      `What each would do by itself at the place that is weakest now: ${f.volts(volts)} ${atSpot(spot, f)}. Estimates; switches as they normally stand.`,
    ifThereWere: 'If there were',
    there: 'There',
    gain: 'Gain',
    weakestThen: 'Weakest then',
    noneLive: 'none live',
    needed: (
      {
        name,
        openCircuitV,
        into500OhmV,
        leastV,
      }: { name: string; openCircuitV: number; into500OhmV: number; leastV: number },
      f: Figures,
    ) =>
      `With nothing else changed, the fence of ${name} would need an energiser of about ${f.volts(openCircuitV)} with no load and ${f.volts(into500OhmV)} into 500 ohm to hold ${f.volts(leastV)} everywhere. Clear the growth first: it is nearly always cheaper.`,
    moreWires: 'One more live wire carries more and leaks more: on a fence with growth it can cost voltage.',
  },
  switches: {
    what: 'what each switch turns off',
    caption: 'What each switch turns off or on, the others as they normally stand',
    empty: 'No cut-out switch stands on a fence that an energiser feeds.',
    switch: 'Switch',
    turnedOff: ({ name }: { name: string }) => `${name} off`,
    turnedOn: ({ name }: { name: string }) => `${name} on`,
    fence: 'Fence',
    noneDead: 'none dead (fed from both sides)',
    noneAlive: 'none (live on both sides)',
    notFed: 'none (not fed)',
    goesDead: ({ lengthM }: { lengthM: number }, f: Figures) => `${f.length(lengthM)} dead`,
    comesAlive: ({ lengthM }: { lengthM: number }, f: Figures) => `${f.length(lengthM)} alive`,
    weakestThen: 'Weakest then',
    allDead: 'all dead',
    showIt: 'Show it',
    show: 'Show',
    showWithOff: ({ name }: { name: string }) => `Show it with ${name} off`,
    showWithOn: ({ name }: { name: string }) => `Show it with ${name} on`,
  },
};
