import { formatAtLeast, type Units } from '../../words/numbers/write.ts';
import { type Basis, published } from '../basis.ts';

export const earthTestBasis: Basis = published('Virginia Cooperative Extension SPES-204 (the procedure)');

/** At or under this the earth field is good; both figures are common practice, no source. */
export const EARTH_TEST_GOOD_V = 200;
/** Over this more rods are needed. */
export const EARTH_TEST_MORE_RODS_OVER_V = 300;

/** How an earth field is tested, step by step. */
export function earthTestSteps(units: Units): readonly string[] {
  return [
    'Turn the energiser off and prove the fence dead.',
    `At least ${formatAtLeast(100, units)} from the energiser, short the fence to ground: lean steel bars or rods on the live wires, driven into damp soil.`,
    'Turn the energiser on and read the fence by the short. It must read low; if not, turn off, add more shorts and read again.',
    'Push an independent earth pin into the ground as far from the last rod as the tester’s lead allows, clear of any pipe or cable.',
    'Read the last rod of the earth field against the pin.',
    `${EARTH_TEST_GOOD_V} V and under is good. Over ${EARTH_TEST_MORE_RODS_OVER_V} V: add rods and test again. Between the two: test again when the ground is at its driest.`,
    'Turn the energiser off, prove the fence dead, and take the shorts away. Write the reading down with the date and how dry the ground was.',
  ];
}

export function earthTestVerdict(rodVoltageV: number): 'good' | 'borderline' | 'more rods' {
  if (rodVoltageV <= EARTH_TEST_GOOD_V) return 'good';
  return rodVoltageV <= EARTH_TEST_MORE_RODS_OVER_V ? 'borderline' : 'more rods';
}
