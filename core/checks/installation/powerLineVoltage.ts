import { called } from '../../model/edits/support/find.ts';
import { capital } from '../../model/text.ts';
import type { Check } from '../support/context.ts';
import { finding, standard, theService } from '../support/make.ts';
import { overheadPowerLines, widestZoneM, wiresUnder } from '../support/powerLines.ts';
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
      message: `${capital(theService(service))} passes over or near live wires (${called(near.thing)}), and its voltage is not entered; the clearance it asks for is not known.`,
      remedy: 'Enter its voltage. Until then keep 8 m clear and ask its operator.',
      source: standard,
      at: service.path[0] ?? null,
    });
  });
