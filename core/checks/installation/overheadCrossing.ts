import { polylineGap } from '../../geometry/polyline.ts';
import { called } from '../../model/edits/support/find.ts';
import { leastOverheadHeightM } from '../../model/overheadHeight.ts';
import type { Finding } from '../finding.ts';
import type { Check } from '../support/context.ts';
import { assumption, finding, standard, theService } from '../support/make.ts';
import { overheadPowerLines, powerLineLimits, widestZoneM } from '../support/powerLines.ts';

/** A live wire carried over a gateway: high enough for what passes below, and away from power lines. */
export const overheadCrossing: Check = (context) => {
  const { survey, say } = context;
  const powerLines = overheadPowerLines(context);
  const findings: Finding[] = [];
  for (const { crossing, gateway, path } of survey.crossings.values()) {
    if (crossing.method !== 'overhead') continue;
    const at = survey.gateways.get(gateway.id)?.startPostAt ?? null;
    const leastM = leastOverheadHeightM(gateway);
    if (crossing.riserHeightM < leastM) {
      findings.push(
        finding('overheadCrossing', 'warning', [crossing.id, gateway.id], {
          message: `The overhead wire at ${called(gateway)} hangs ${say(crossing.riserHeightM)} above ground; ${gateway.vehicles ? 'vehicles pass' : 'people and stock pass'} below, and ${say(leastM)} is assumed by this program to be the least: check local rules.`,
          remedy: 'Raise it, or bury the crossing. What passes below and the local rules may ask for more.',
          source: assumption,
          at,
        }),
      );
    }
    for (const { service, xy } of powerLines) {
      const zoneM = service.voltageV === null ? widestZoneM : powerLineLimits(service.voltageV).zoneM;
      const gap = polylineGap(path, xy);
      if (!gap || gap.distanceM > zoneM) continue;
      findings.push(
        finding('overheadCrossing', 'warning', [crossing.id, service.id], {
          message: `The overhead wire at ${called(gateway)} is ${say(gap.distanceM)} from ${theService(service)}, inside the ${say(zoneM)} where leads may stand at most 3 m above ground.`,
          remedy: 'Bury this crossing, or move the gateway away from the power line.',
          source: standard,
          at,
        }),
      );
    }
  }
  return findings;
};
