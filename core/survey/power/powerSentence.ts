import { propertyOf } from '../../model/project.ts';
import type { Stood } from '../../words/en/power/estimate.ts';
import { type Message, message } from '../../words/message.ts';
import type { LineVoltages } from './lineVoltages.ts';
import type { Estimate, Power } from './types.ts';

/**
 * The question of the Power workspace answered: "Weakest place about 5.2 kV at the end of F12 (estimate); 4.0 kV holds
 * the stock." `stood` says how the switches stand where that is not as usual.
 */
export function powerSentence(
  power: Power,
  estimate: Estimate,
  lines: readonly LineVoltages[],
  stood: Stood | null = null,
): Message {
  const refused = power.problems.find(({ weight }) => weight === 'refused');
  if (power.supplies.length === 0) return refused?.message ?? message('power.answer.notKnown');
  const { weakest } = estimate;
  if (!weakest) return message('power.answer.noneLive', { stood });
  const leastV = propertyOf(power.project).power.stockMinimumV;
  const belowM = lines.reduce(
    (sum, line) => sum + (line.fed === 'none' || Number.isNaN(line.belowM) ? 0 : line.belowM),
    0,
  );
  const said = { stood, volts: weakest.volts, spot: weakest.spot, leastV };
  return weakest.volts >= leastV
    ? message('power.answer.holds', said)
    : message('power.answer.tooLow', { ...said, belowM });
}
