import { lonLatAt } from '../../shapes/measuredPath.ts';
import type { Check } from '../support/context.ts';
import { finding, headed, standard, theService } from '../support/make.ts';
import { mostHeightM, overheadPowerLines, powerLineLimits, wiresUnder } from '../support/powerLines.ts';
import { stretchesWithin } from '../support/zones.ts';

/** Live wires under or beside a power line of known voltage. Heights are not drawn, so they have to be measured. */
export const powerLineHeights: Check = (context) => {
  const { say } = context;
  return overheadPowerLines(context).flatMap((line) => {
    const { service, xy } = line;
    if (service.voltageV === null) return [];
    const { clearanceM, zoneM } = powerLineLimits(service.voltageV);
    return wiresUnder(context, line, zoneM).flatMap((wire) => {
      const stretches = stretchesWithin(wire.path, xy, zoneM);
      if (stretches.length === 0) return [];
      const lengthM = stretches.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
      return finding('powerLineHeights', 'notKnown', [service.id, wire.thing.id], {
        message: `${headed(wire.thing)} runs for ${say(lengthM)} under or within ${say(zoneM)} of ${theService(service)}. There its wires may stand at most ${say(mostHeightM)} above ground and must keep ${say(clearanceM)} clear of the conductors; neither height is known.`,
        remedy:
          'Have the height of the conductors measured by a licensed person, never with a pole or tape held up; note both heights with the line.',
        source: standard,
        at: lonLatAt(wire.path, stretches[0]!.fromM),
      });
    });
  });
};
