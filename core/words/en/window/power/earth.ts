import { formatAtLeast } from '../../../numbers/write.ts';
import type { Figures } from '../../../types.ts';
import { type BasisValues, basisInWords } from '../../power/sources.ts';

/** The earth stakes: what they come to, how many are needed, and the test that decides. */
export const earth = {
  none: ({ name }: { name: string }) => `No earth stakes are drawn for ${name}.`,
  add: 'Add them',
  addStep: 'Add earth stakes',
  soil: {
    title: 'Soil',
    label: 'Soil at the stakes',
    step: 'Change the soil',
    choice: (
      {
        soil,
        meanOhmM,
        lowestOhmM,
        highestOhmM,
      }: { soil: string; meanOhmM: number; lowestOhmM: number; highestOhmM: number },
      f: Figures,
    ) => `${soil}: ${f.number(meanOhmM, 0)} (${f.number(lowestOhmM, 0)} to ${f.number(highestOhmM, 0)}) ohm m`,
    own: 'Own figure',
    hint: ({ basis }: { basis: BasisValues }, f: Figures) =>
      `Means, with lowest and highest: ${basisInWords(basis, f)}. Dampness alone moves a soil through most of its range.`,
    resistivity: 'Soil resistivity',
  },
  of: ({ name }: { name: string }) => `Earth of ${name}`,
  together: 'Together',
  oneRod: 'One rod',
  ohm: ({ ohm }: { ohm: number }, f: Figures) => `${f.number(ohm, 1)} ohm`,
  ownVolts: 'Volts on the earth stakes',
  formulas: ({ basis }: { basis: BasisValues }, f: Figures) =>
    `Estimates. One rod by H. B. Dwight, AIEE Transactions 55 (1936); together by ${basisInWords(basis, f)}.`,
  target: {
    label: 'Bring it down to',
    hint: ({ ohm, goodV }: { ohm: number; goodV: number }, f: Figures) =>
      `At ${f.number(ohm, 1)} ohm an earth test with the fence shorted would read about ${f.volts(goodV)}.`,
    step: 'Change the earth stakes',
    needed: ({ rods, ohm }: { rods: number; ohm: number }, f: Figures) =>
      `${rodsOf(rods, f)} like these would come to about ${f.number(ohm, 1)} ohm.`,
    plan: ({ rods }: { rods: number }, f: Figures) => `Plan ${f.number(rods)} rods`,
    notEnough: ({ mostRods }: { mostRods: number }, f: Figures) =>
      `Not even ${f.number(mostRods)} rods like these come down to that. Longer rods, damper ground or a second field are needed.`,
  },
  ruleOfThumb: {
    label: 'Rule of thumb:',
    rods: (
      {
        inGroundM,
        rods,
        rodLengthM,
        perJouleM,
      }: { inGroundM: number; rods: number; rodLengthM: number; perJouleM: number },
      f: Figures,
    ) =>
      `${f.length(inGroundM)} of rod in the ground, ${rodsOf(rods, f)} of ${f.length(rodLengthM)} (${formatAtLeast(perJouleM, f.units)} for each joule of output).`,
    enterOutput: ({ perJouleM }: { perJouleM: number }, f: Figures) =>
      `enter the output energy on the label, and it is ${formatAtLeast(perJouleM, f.units)} of rod for each joule.`,
    clearance: (
      { basis, clearanceM, electrodeM }: { basis: BasisValues; clearanceM: number; electrodeM: number },
      f: Figures,
    ) =>
      `${basisInWords(basis, f)}; it also asks for ${f.length(clearanceM)} from other earths, water pipes and utilities. The standard's least distance to another earth electrode is ${formatAtLeast(electrodeM, f.units)} (IEC 60335-2-76, Annex BB).`,
  },
  test: {
    label: 'Earth test',
    title: 'The earth test',
    caution:
      'The fence is live while you read. Keep people and stock away. Put shorts on, and take them off, only with the energiser off and the fence proven dead. Locate buried services before you drive rods or pins.',
    field: 'Earth stakes of',
    reading: 'Read at the last rod',
    write: 'Write it down',
    writeStep: 'Write down an earth test',
    verdict: {
      good: ({ goodV }: { goodV: number }, f: Figures) => `Good: ${f.volts(goodV)} and under.`,
      borderline: 'Borderline: test again when the ground is at its driest.',
      moreRods: ({ overV }: { overV: number }, f: Figures) => `Add rods and test again: over ${f.volts(overV)}.`,
    },
    kept: ({ day, volts, verdict }: { day: string; volts: number; verdict: string }, f: Figures) =>
      `${f.date(day)}: ${f.volts(volts)}. ${verdict}`,
    basis: ({ basis, goodV, overV }: { basis: BasisValues; goodV: number; overV: number }, f: Figures) =>
      `${basisInWords(basis, f)}; the ${f.volts(goodV)} and ${f.volts(overV)} are common practice, no source.`,
  },
};

function rodsOf(count: number, f: Figures): string {
  return `${f.number(count, 0)} ${f.plural(count, { one: 'rod', other: 'rods' })}`;
}
