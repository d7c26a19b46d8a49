import { capital } from '../../text.ts';
import type { Figures } from '../../types.ts';
import { atSpot, type Spot, theSpot } from '../survey/spots.ts';
import { type Metal, metals } from './conductors.ts';

/** How switches stand where that is not as usual: those off, those on. */
export interface Stood {
  readonly off: readonly string[];
  readonly on: readonly string[];
  /** All of them on, whatever they are called. */
  readonly allOn: boolean;
}

/** "with S4 off and with S9 on", "with all switches on". */
export function standing({ off, on, allOn }: Stood, f: Figures): string {
  if (allOn) return 'with all switches on';
  const parts = [
    ...(off.length > 0 ? [`with ${f.list(off)} off`] : []),
    ...(on.length > 0 ? [`with ${f.list(on)} on`] : []),
  ];
  return parts.join(' and ');
}

/** The answer of the Power workspace. */
export const answer = {
  notKnown: 'The voltage is not known.',
  noneLive: ({ stood }: { stood: Stood | null }, f: Figures) => `${withStood(stood, 'no fence is live', f)}.`,
  holds: (
    { stood, volts, spot, leastV }: { stood: Stood | null; volts: number; spot: Spot; leastV: number },
    f: Figures,
  ) => `${withStood(stood, weakest(volts, spot, f), f)}; ${f.volts(leastV)} holds the stock.`,
  tooLow: (
    {
      stood,
      volts,
      spot,
      leastV,
      belowM,
    }: { stood: Stood | null; volts: number; spot: Spot; leastV: number; belowM: number },
    f: Figures,
  ) =>
    `${withStood(stood, weakest(volts, spot, f), f)}; ${f.volts(leastV)} would hold the stock, and ${f.length(belowM)} of fence reads less.`,
};

function weakest(volts: number, spot: Spot, f: Figures): string {
  return `weakest place about ${f.volts(volts)} ${atSpot(spot, f)} (estimate)`;
}

function withStood(stood: Stood | null, said: string, f: Figures): string {
  return stood ? `${capital(standing(stood, f))}: ${said}` : capital(said);
}

/** What could be done for the weakest place. */
export const improvements = {
  wires: 'One more live wire on all fence, joined in parallel',
  wiresOnWay: 'One more live wire on the way to the weakest place, joined in parallel',
  leadOut: ({ metal, diameterMm }: { metal: Metal; diameterMm: number }, f: Figures) =>
    `Heavier lead-out: fence lead-out cable, ${metals[metal]} core ${f.number(diameterMm, 1)} mm, rated 10 kV or more`,
  switchOn: ({ name }: { name: string }) => `${name} on`,
  growth: 'Growth cleared on all fence: new and clean',
  growthWorst: ({ section }: { section: string }) => `Growth cleared on section ${section} alone, which leaks most`,
  energiser: ({ openCircuitV, into500OhmV }: { openCircuitV: number; into500OhmV: number }, f: Figures) =>
    `Larger energiser: ${f.volts(openCircuitV)} with no load, ${f.volts(into500OhmV)} into 500 ohm`,
  rods: ({ rods }: { rods: number }, f: Figures) =>
    `Twice the earth rods: ${f.number(2 * rods)} in place of ${f.number(rods)}`,
  ring: ({ lengthM, from, to }: { lengthM: number; from: Spot; to: Spot }, f: Figures) =>
    `A ring closed by ${f.length(lengthM)} of live fence from ${theSpot(from, f)} to ${theSpot(to, f)}`,
};
