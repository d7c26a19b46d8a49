import Flatbush from 'flatbush';
import { boxAround } from '../../geometry/plane/box.ts';
import { polylineGap } from '../../geometry/plane/polylineGap.ts';
import { called } from '../../model/edits/support/find.ts';
import type { Service, ServiceKind } from '../../model/things.ts';
import type { Check } from '../support/context.ts';
import { assumption, finding, theService } from '../support/make.ts';

/** How far a trench keeps from what lies buried; an assumption of this project. The owner of the service may ask more. */
const clearancesM: Partial<Record<ServiceKind, number>> = {
  powerLine: 1,
  gasPipe: 1,
  waterPipe: 0.5,
  dataCable: 0.5,
  drain: 0.5,
};

/** A trench that crosses a buried service, or runs closer to it than its clearance. */
export const trenchNearService: Check = ({ survey, services, say }) => {
  const buried = services.filter(({ service }) => isBuried(service) && clearancesM[service.what] !== undefined);
  const segments = buried.flatMap((shape) =>
    Array.from({ length: Math.max(1, shape.xy.length - 1) }, (_, i) => ({ shape, path: shape.xy.slice(i, i + 2) })),
  );
  if (segments.length === 0) return [];
  const index = new Flatbush(segments.length);
  for (const { path } of segments) index.add(...boxAround(path)!);
  index.finish();
  return [...survey.crossings.values()].flatMap(({ crossing, gateway, path }) => {
    const box = boxAround(path);
    if (crossing.method !== 'buried' || !box) return [];
    const nearest = new Map<Service, { gapM: number; xy: readonly [number, number] }>();
    for (const found of index.search(box[0] - 1, box[1] - 1, box[2] + 1, box[3] + 1)) {
      const { shape, path: other } = segments[found]!;
      const gap = polylineGap(path, other);
      if (!gap || gap.distanceM >= clearancesM[shape.service.what]!) continue;
      if (gap.distanceM < (nearest.get(shape.service)?.gapM ?? Infinity)) {
        nearest.set(shape.service, { gapM: gap.distanceM, xy: gap.onFirst });
      }
    }
    return [...nearest].map(([service, { gapM, xy }]) => {
      const how = gapM < 0.005 ? 'crosses' : `comes within ${say(gapM)} of`;
      return finding('trenchNearService', 'warning', [crossing.id, service.id], {
        message: `The trench under ${called(gateway)} ${how} ${theService(service)}; ${say(clearancesM[service.what]!)} is the least.`,
        remedy:
          'Have the service located before digging; bow the trench the other way, move the gateway, or dig there by hand.',
        source: assumption,
        at: survey.plane.toLonLat(xy),
      });
    });
  });
};

function isBuried({ what, buried }: Service): boolean {
  return buried || what === 'gasPipe';
}
