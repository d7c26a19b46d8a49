import { called } from '../../model/edits/support/find.ts';
import { capital } from '../../model/text.ts';
import { stationOf } from '../../shapes/measuredPath.ts';
import type { Check } from '../support/context.ts';
import { finding, standard, theService } from '../support/make.ts';
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
        message: `${capital(theService(service))}, which the public uses, crosses ${called(shape.line)} where there is no gateway. A public way through a live fence has a non-electrified gate or a stile, with warning signs on the wires beside it.`,
        remedy: 'Place a gateway there, or note the stile with the line, and put up the signs.',
        source: standard,
        at: survey.plane.toLonLat(closed.point),
      });
    });
  });
