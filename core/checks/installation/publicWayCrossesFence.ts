import { refTo, refToService } from '../../model/refTo.ts';
import { stationOf } from '../../shapes/measuredPath.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding, standard } from '../support/make.ts';
import { openingAt } from '../support/openings.ts';
import { pathCrossings } from '../support/pathCrossings.ts';

/** A way drawn this near to a gate post goes through the gateway. */
const slackM = 2;

/** A public road or path that crosses a live fence away from any gateway. */
export const publicWayCrossesFence: Check = ({ services, wires, openings, survey }) =>
  services.flatMap(({ service, xy }) => {
    if ((service.what !== 'road' && service.what !== 'path') || service.open !== 'public') return [];
    return wires.nearPath(xy, 0).flatMap(({ shape }) => {
      if (!shape) return [];
      const closed = pathCrossings(shape.xy, xy).find(({ segment, fraction }) => {
        return !openingAt(openings, shape.line.id, stationOf(shape, { segment, fraction }), slackM);
      });
      if (!closed) return [];
      return finding('publicWayCrossesFence', 'warning', [service.id, shape.line.id], {
        message: message('checks.publicWayCrossesFence.message', {
          service: refToService(service),
          line: refTo(shape.line),
        }),
        remedy: message('checks.publicWayCrossesFence.remedy'),
        source: standard,
        at: survey.plane.toLonLat(closed.point),
      });
    });
  });
