import { polylineGap } from '../../geometry/polyline.ts';
import { leastOverheadHeightM } from '../../model/overheadHeight.ts';
import { refTo, refToService } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Found } from '../finding.ts';
import type { Check } from '../support/context.ts';
import { assumption, finding, standard } from '../support/make.ts';
import { mostHeightM, overheadPowerLines, powerLineLimits, widestZoneM } from '../support/powerLines.ts';

/** A live wire carried over a gateway: high enough for what passes below, and away from power lines. */
export const overheadCrossing: Check = (context) => {
  const { survey } = context;
  const powerLines = overheadPowerLines(context);
  const findings: Found[] = [];
  for (const { crossing, gateway, path } of survey.crossings.values()) {
    if (crossing.method !== 'overhead') continue;
    const at = survey.gateways.get(gateway.id)?.startPostAt ?? null;
    const leastM = leastOverheadHeightM(gateway);
    if (crossing.riserHeightM < leastM) {
      findings.push(
        finding('overheadCrossing', 'warning', [crossing.id, gateway.id], {
          message: message('checks.overheadCrossing.low', {
            gateway: refTo(gateway),
            heightM: crossing.riserHeightM,
            vehicles: gateway.vehicles,
            leastM,
          }),
          remedy: message('checks.overheadCrossing.lowRemedy'),
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
          message: message('checks.overheadCrossing.nearPowerLine', {
            gateway: refTo(gateway),
            service: refToService(service),
            awayM: gap.distanceM,
            zoneM,
            mostM: mostHeightM,
          }),
          remedy: message('checks.overheadCrossing.nearPowerLineRemedy'),
          source: standard,
          at,
        }),
      );
    }
  }
  return findings;
};
