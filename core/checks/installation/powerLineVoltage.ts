import { refTo, refToService } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding, standard } from '../support/make.ts';
import { overheadPowerLines, widestClearanceM, widestZoneM, wiresUnder } from '../support/powerLines.ts';
import { stretchesWithin } from '../support/zones.ts';

/** A power line near live wires whose voltage is not entered: nothing about its clearance can be said. */
export const powerLineVoltage: Check = (context) =>
  overheadPowerLines(context).flatMap((line) => {
    const { service, xy } = line;
    if (service.voltageV !== null) return [];
    const near = wiresUnder(context, line, widestZoneM).find(
      (wire) => stretchesWithin(wire.path, xy, widestZoneM).length > 0,
    );
    if (!near) return [];
    return finding('powerLineVoltage', 'notKnown', [service.id], {
      message: message('checks.powerLineVoltage.message', {
        service: refToService(service),
        thing: refTo(near.thing),
      }),
      remedy: message('checks.powerLineVoltage.remedy', { clearM: widestClearanceM }),
      source: standard,
      at: service.path[0] ?? null,
    });
  });
