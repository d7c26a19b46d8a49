import { type Certainty, sureFactor } from '../../locate/certainty.ts';
import type { StakeOut, StakePoint, StakeStep } from '../../locate/stakeOut.ts';
import { formatTape, type Units } from '../../model/formatUnits.ts';

/** "From the hinge post of G12 2.40 m, from post P3 3.10 m, on the north side: here." */
export function tapesInWords({ tapes, side, offset }: StakePoint, units: Units): string {
  const [first, ...more] = tapes;
  if (!first) return `${formatTape(Math.abs(offset.leftM), units)} off the line between the gate posts.`;
  if (more.length === 0 && first.distanceM < 0.02) return `At the foot of the ${first.postName}.`;
  const parts = tapes.map(({ postName, distanceM, gone }) => {
    return `from the ${postName}${gone ? ' (no longer drawn)' : ''} ${formatTape(distanceM, units)}`;
  });
  const where = side ? `, on the ${side} side` : '';
  const words = `${parts.join(', ')}${where}: here.`;
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export function pointSureInWords({ by, withinM, weak }: StakePoint, units: Units): string {
  const within = formatTape(withinM, units);
  const said = {
    ties: `Taped when it was recorded; good to ${within}`,
    offset: `Measured off the line of the gate posts; good to ${within}`,
    gps: `From a receiver; good to ${within}`,
    drawn: `Only drawn, not measured; may be ${within} off`,
  }[by];
  return `${said}.${weak ? ' The tapes meet at a flat angle: a small slip moves the place far.' : ''}`;
}

/** How sure the trench as a whole is, and what that rests on. */
export function certaintyInWords({ basis, withinM, seM }: Certainty, units: Units): string {
  const within = formatTape(withinM, units);
  const error =
    seM === null
      ? ''
      : ` (worst standard error ${formatTape(seM, units)}, times ${sureFactor.toFixed(2)} for 95 in 100, and what a trench strays between the points)`;
  if (basis === 'measured') return `Measured: it lies within ${within} of this line${error}.`;
  if (basis === 'partly')
    return `Partly measured: it lies within about ${within} of this line; what was not measured is assumed.`;
  return `Only drawn: nobody measured it. It is assumed to lie within ${within} of this line. Dig by hand and look for the risers first.`;
}

/** "north 0.85 m" */
export function stepOffset(
  { leftM }: StakeStep,
  { leftIs, rightIs }: Pick<StakeOut, 'leftIs' | 'rightIs'>,
  units: Units,
): string {
  if (Math.abs(leftM) < 0.005) return 'on the line';
  return `${formatTape(Math.abs(leftM), units)} ${leftM > 0 ? leftIs : rightIs}`;
}
