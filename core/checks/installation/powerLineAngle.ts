import { refTo, refToService } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding, standard } from '../support/make.ts';
import { pathCrossings } from '../support/pathCrossings.ts';

/** "As nearly at right angles as possible" is the standard's; this figure for it is an assumption of this project. */
const leastAngleDeg = 60;

/** A live wire that crosses beneath an overhead power or communication line at a slant. */
export const powerLineAngle: Check = ({ services, wires, survey }) =>
  services.flatMap(({ service, xy }) => {
    if (service.buried || (service.what !== 'powerLine' && service.what !== 'dataCable')) return [];
    return wires.nearPath(xy, 0).flatMap((wire) => {
      const crossings = pathCrossings(wire.xy, xy);
      const worst = crossings.reduce((low, crossing) => (crossing.angleDeg < low.angleDeg ? crossing : low), {
        angleDeg: leastAngleDeg,
        point: null,
      } as { angleDeg: number; point: readonly [number, number] | null });
      if (!worst.point) return [];
      return finding('powerLineAngle', 'warning', [service.id, wire.thing.id], {
        message: message('checks.powerLineAngle.message', {
          thing: refTo(wire.thing),
          service: refToService(service),
          angleDeg: worst.angleDeg,
        }),
        remedy: message('checks.powerLineAngle.remedy'),
        source: standard,
        at: survey.plane.toLonLat(worst.point),
      });
    });
  });
