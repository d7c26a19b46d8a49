import { refTo, refToService } from '../../model/refTo.ts';
import { lonLatAt } from '../../shapes/measuredPath.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding, standard } from '../support/make.ts';
import { mostHeightM, overheadPowerLines, powerLineLimits, wiresUnder } from '../support/powerLines.ts';
import { stretchesWithin } from '../support/zones.ts';

/** Live wires under or beside a power line of known voltage. Heights are not drawn, so they have to be measured. */
export const powerLineHeights: Check = (context) => {
  return overheadPowerLines(context).flatMap((line) => {
    const { service, xy } = line;
    if (service.voltageV === null) return [];
    const { clearanceM, zoneM } = powerLineLimits(service.voltageV);
    return wiresUnder(context, line, zoneM).flatMap((wire) => {
      const stretches = stretchesWithin(wire.path, xy, zoneM);
      if (stretches.length === 0) return [];
      const lengthM = stretches.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
      return finding('powerLineHeights', 'notKnown', [service.id, wire.thing.id], {
        message: message('checks.powerLineHeights.message', {
          thing: refTo(wire.thing),
          service: refToService(service),
          lengthM,
          zoneM,
          mostM: mostHeightM,
          clearanceM,
        }),
        remedy: message('checks.powerLineHeights.remedy'),
        source: standard,
        at: lonLatAt(wire.path, stretches[0]!.fromM),
      });
    });
  });
};
