import type { Check } from '../support/context.ts';
import { finding, headed, standard, theService } from '../support/make.ts';
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
        message: `${headed(wire.thing)} crosses beneath ${theService(service)} at ${Math.round(worst.angleDeg)}°. It should cross as nearly at right angles as possible.`,
        remedy: 'Turn the fence square to the line where they cross, or keep it from crossing at all.',
        source: standard,
        at: survey.plane.toLonLat(worst.point),
      });
    });
  });
