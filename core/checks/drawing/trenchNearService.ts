import { boxAround } from '../../geometry/box.ts';
import { type PolylineGap, polylineGap } from '../../geometry/polyline.ts';
import type { Xy } from '../../geometry/types.ts';
import { keptForPair } from '../../model/memo.ts';
import { refTo, refToService } from '../../model/refTo.ts';
import type { Service, ServiceKind } from '../../model/things.ts';
import { message } from '../../words/message.ts';
import { isCable } from '../installation/cableInTrench.ts';
import type { Check } from '../support/context.ts';
import { assumption, finding } from '../support/make.ts';
import { segmentsNear } from '../support/segmentIndex.ts';

/** How far a trench keeps from what lies buried; an assumption of this project. The owner of the service may ask more. */
const clearancesM: Partial<Record<ServiceKind, number>> = {
  powerLine: 1,
  gasPipe: 1,
  waterPipe: 0.5,
  dataCable: 0.5,
  drain: 0.5,
};

/** A trench that crosses a buried service, or runs closer to it than its clearance. */
export const trenchNearService: Check = ({ survey, services }) => {
  const buried = services.filter(({ service }) => isBuried(service) && clearancesM[service.what] !== undefined);
  if (buried.length === 0) return [];
  return [...survey.crossings.values()].flatMap(({ crossing, gateway, path }) => {
    if (crossing.method !== 'buried' || path.length === 0) return [];
    return buried.flatMap(({ service, xy }) => {
      const leastM = clearancesM[service.what]!;
      const gap = gapWithin(path, xy, leastM);
      if (!gap) return [];
      return finding('trenchNearService', 'warning', [crossing.id, service.id], {
        message: message('checks.trenchNearService.message', {
          gateway: refTo(gateway),
          service: refToService(service),
          gapM: gap.distanceM < 0.005 ? null : gap.distanceM,
          leastM,
        }),
        remedy: message('checks.trenchNearService.remedy', { cable: isCable(service) }),
        source: assumption,
        at: survey.plane.toLonLat(gap.onFirst),
      });
    });
  });
};

/** Places on the earth hold to some nanometres; what lies exactly at a clearance keeps it. */
const roundingM = 1e-6;

/** The gap between a trench and a service where it is less than a clearance, or null. */
const gapWithin = keptForPair((trench: readonly Xy[], service: readonly Xy[], leastM: number): PolylineGap | null => {
  const [minX, minY, maxX, maxY] = boxAround(trench)!;
  const near = segmentsNear(service, [minX - leastM, minY - leastM, maxX + leastM, maxY + leastM]);
  const gaps = near.map((i) => polylineGap(trench, service.slice(i, i + 2))!);
  const nearest = gaps.reduce<PolylineGap | null>((a, b) => (a && a.distanceM <= b.distanceM ? a : b), null);
  return nearest && nearest.distanceM < leastM - roundingM ? nearest : null;
});

function isBuried({ what, buried }: Service): boolean {
  return buried || what === 'gasPipe';
}
