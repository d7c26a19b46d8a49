import { type Message, message } from '../../words/message.ts';
import { type Basis, published } from '../basis.ts';

export const earthTestBasis: Basis = published(message('power.sources.earthTest'));

/** At or under this the earth field is good; both figures are common practice, no source. */
export const EARTH_TEST_GOOD_V = 200;
/** Over this more rods are needed. */
export const EARTH_TEST_MORE_RODS_OVER_V = 300;

/** The fence is shorted at least this far from the energiser, by the same procedure. */
const shortedFromM = 100;

/** How an earth field is tested, step by step. */
export function earthTestSteps(): readonly Message[] {
  return [
    message('power.earth.test.begin'),
    message('power.earth.test.short', { fromEnergiserM: shortedFromM }),
    message('power.earth.test.readFence'),
    message('power.earth.test.pin'),
    message('power.earth.test.readRod'),
    message('power.earth.test.judge', { goodV: EARTH_TEST_GOOD_V, moreRodsOverV: EARTH_TEST_MORE_RODS_OVER_V }),
    message('power.earth.test.end'),
  ];
}

export function earthTestVerdict(rodVoltageV: number): 'good' | 'borderline' | 'moreRods' {
  if (rodVoltageV <= EARTH_TEST_GOOD_V) return 'good';
  return rodVoltageV <= EARTH_TEST_MORE_RODS_OVER_V ? 'borderline' : 'moreRods';
}
