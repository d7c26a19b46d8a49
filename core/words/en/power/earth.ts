import { formatAtLeast } from '../../numbers/write.ts';
import type { Figures, Phrase } from '../../types.ts';

/** The earth stakes and their test. */
export const earth = {
  /** What spacing does to the estimate. */
  spacing: {
    closer: ({ spacingM, rodLengthM }: { spacingM: number; rodLengthM: number }, f: Figures) =>
      `Rods ${f.tape(spacingM)} apart are closer than their length (${f.tape(rodLengthM)}): they share the same soil, and the resistance is higher than estimated.`,
    fits: ({ spacingM, askedM }: { spacingM: number; askedM: number }, f: Figures) =>
      `Rods ${f.tape(spacingM)} apart fit the estimate; the published rule of thumb asks for over ${formatAtLeast(askedM, f.units)}.`,
    further: ({ spacingM, rodLengthM }: { spacingM: number; rodLengthM: number }, f: Figures) =>
      `Rods ${f.tape(spacingM)} apart are further than their length (${f.tape(rodLengthM)}): the resistance is no higher than estimated.`,
  },
  betweenFactors: ({ source, rods }: { source: Phrase; rods: number }, f: Figures) =>
    `${f.say(source)} gives no factor for ${f.number(rods)} rods; it is taken between its neighbours.`,
  beyondFactors: ({ source, rods }: { source: Phrase; rods: number }, f: Figures) =>
    `${f.say(source)} stops short of ${f.number(rods)} rods: the figure is no more than a guess.`,
  /** How an earth field is tested. */
  test: {
    begin: 'Turn the energiser off and prove the fence dead.',
    short: ({ fromEnergiserM }: { fromEnergiserM: number }, f: Figures) =>
      `At least ${formatAtLeast(fromEnergiserM, f.units)} from the energiser, short the fence to ground: lean steel bars or rods on the live wires, driven into damp soil.`,
    readFence:
      'Turn the energiser on and read the fence by the short. It must read low; if not, turn off, add more shorts and read again.',
    pin: 'Push an independent earth pin into the ground as far from the last rod as the tester’s lead allows, clear of any pipe or cable.',
    readRod: 'Read the last rod of the earth field against the pin.',
    judge: ({ goodV, moreRodsOverV }: { goodV: number; moreRodsOverV: number }, f: Figures) =>
      `${f.volts(goodV)} and under is good. Over ${f.volts(moreRodsOverV)}: add rods and test again. Between the two: test again when the ground is at its driest.`,
    end: 'Turn the energiser off, prove the fence dead, and take the shorts away. Write the reading down with the date and how dry the ground was.',
  },
  soils: {
    fill: 'Fill: ashes, cinders, brine waste',
    clay: 'Clay, shale, gumbo, loam',
    mixed: 'The same, mixed with sand or gravel',
    gravel: 'Gravel, sand, stones, little clay or loam',
  },
};
