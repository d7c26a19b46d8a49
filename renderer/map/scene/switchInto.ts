import type { Xy } from '../../../core/geometry/types.ts';
import { subtract, unit } from '../../../core/geometry/vector.ts';
import type { LeadOut, SwitchPlace } from '../../../core/model/things.ts';
import { xyAt } from '../../../core/shapes/measuredPath.ts';
import type { LineShape } from '../../../core/shapes/types.ts';
import type { Survey } from '../../../core/survey/types.ts';

/** Far enough along a line to tell its direction, metres. */
const aheadM = 0.5;

/** Unit vector from a switch's place into the fence or the cable that it cuts; zero for one along a line. */
export function switchInto(survey: Survey, leadOutPath: (id: LeadOut['id']) => readonly Xy[], place: SwitchPlace): Xy {
  if (place.on === 'gateway') {
    const shape = survey.gateways.get(place.gatewayId);
    const line = shape && survey.lines.get(shape.gateway.lineId);
    if (!shape || !line) return [0, 0];
    return place.post === 'start' ? direction(line, shape.fromM, -aheadM) : direction(line, shape.toM, aheadM);
  }
  if (place.on === 'lineEnd') {
    const line = survey.lines.get(place.lineId);
    if (!line) return [0, 0];
    return place.end === 'start' ? direction(line, 0, aheadM) : direction(line, line.lengthM, -aheadM);
  }
  if (place.on === 'line') return [0, 0];
  const path = leadOutPath(place.leadOutId);
  const [before, last] = path.slice(-2);
  return before && last ? unit(subtract(before, last)) : [0, 0];
}

function direction(line: LineShape, atM: number, aheadM: number): Xy {
  return unit(subtract(xyAt(line, atM + aheadM), xyAt(line, atM)));
}
