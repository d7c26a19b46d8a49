import { propertyOf } from '../../model/project.ts';
import { figures } from '../../words/figures.ts';
import { formatLength, formatVoltage, type Units } from '../../words/numbers/write.ts';
import { capital } from '../../words/text.ts';
import type { LineVoltages } from './lineVoltages.ts';
import type { Estimate, Power } from './types.ts';

/**
 * The question of the Power workspace answered: "Weakest place about 5.2 kV at the end of F12 (estimate); 4.0 kV holds
 * the stock." `switches` says how they stand where that is not as usual: "with S4 open".
 */
export function powerSentence(
  power: Power,
  estimate: Estimate,
  lines: readonly LineVoltages[],
  units: Units,
  switches = '',
): string {
  const refused = power.problems.find(({ weight }) => weight === 'refused');
  if (power.supplies.length === 0) return refused ? figures(units).say(refused.message) : 'The voltage is not known.';
  const { weakest } = estimate;
  const head = switches === '' ? '' : `${capital(switches)}: `;
  if (!weakest) return `${head}no fence is live.`;
  const leastV = propertyOf(power.project).power.stockMinimumV;
  const belowM = lines.reduce(
    (sum, line) => sum + (line.fed === 'none' || Number.isNaN(line.belowM) ? 0 : line.belowM),
    0,
  );
  const place = `weakest place about ${formatVoltage(weakest.volts)} ${weakest.text} (estimate)`;
  const holds =
    weakest.volts >= leastV
      ? `${formatVoltage(leastV)} holds the stock.`
      : `${formatVoltage(leastV)} would hold the stock, and ${formatLength(belowM, units)} of fence reads less.`;
  return `${head === '' ? capital(place) : head + place}; ${holds}`;
}
