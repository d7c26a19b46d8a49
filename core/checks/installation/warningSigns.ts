import type { LonLat, Xy } from '../../geometry/types.ts';
import { refTo, refToService } from '../../model/refTo.ts';
import type { FenceLine, Service } from '../../model/things.ts';
import { lonLatAt } from '../../shapes/measuredPath.ts';
import type { LineShape } from '../../shapes/types.ts';
import { message } from '../../words/message.ts';
import type { Check, CheckContext } from '../support/context.ts';
import { finding, standard } from '../support/make.ts';
import { stretchesWithin } from '../support/zones.ts';

/** How near a live fence to a public road or path counts as along it; an assumption of this project. */
const alongM = 15;

/** A fence that merely ends near the road runs along it for no longer than this. */
const leastStretchM = 20;

/** "Frequent intervals" are the standard's; the figure for them is the property's, or else this assumption. */
const usualIntervalM = 50;

export interface SignPlace {
  readonly line: FenceLine;
  readonly service: Service;
  readonly atM: number;
  readonly at: LonLat;
}

/** Where warning signs go along public roads and paths: at both ends of each stretch, and at equal steps between. */
export function signPlaces(context: CheckContext, intervalM = intervalOf(context)): SignPlace[] {
  const { services, wires } = context;
  return services.flatMap(({ service, xy }) => {
    if ((service.what !== 'road' && service.what !== 'path') || service.open !== 'public') return [];
    return wires.nearPath(xy, alongM).flatMap(({ shape }) => {
      if (!shape) return [];
      return stretchesAlong(shape, xy).flatMap(({ fromM, toM }) => {
        const steps = Math.max(1, Math.ceil((toM - fromM) / intervalM - 0.01));
        return Array.from({ length: steps + 1 }, (_, i) => {
          const atM = fromM + ((toM - fromM) * i) / steps;
          return { line: shape.line, service, atM, at: lonLatAt(shape, atM) };
        });
      });
    });
  });
}

function intervalOf({ project }: CheckContext): number {
  return project.orderSettings.get('order')?.signEveryM ?? usualIntervalM;
}

/** Live fence along a public road or path needs warning signs; the drawing holds none, so it counts them. */
export const warningSigns: Check = (context) => {
  const groups = new Map<string, SignPlace[]>();
  for (const place of signPlaces(context)) {
    const key = `${place.service.id} ${place.line.id}`;
    const group = groups.get(key);
    if (group) group.push(place);
    else groups.set(key, [place]);
  }
  return [...groups.values()].map((places) => {
    const { line, service, at } = places[0]!;
    const lengthM = alongLengthM(context, line.id, service.id);
    return finding('warningSigns', 'notKnown', [line.id, service.id], {
      message: message('checks.warningSigns.message', {
        thing: refTo(line),
        service: refToService(service),
        lengthM,
        signs: places.length,
        everyM: intervalOf(context),
      }),
      remedy: message('checks.warningSigns.remedy', { signs: places.length }),
      source: standard,
      at,
    });
  });
};

function alongLengthM({ survey, services }: CheckContext, lineId: string, serviceId: string): number {
  const road = services.find(({ service }) => service.id === serviceId)!;
  return stretchesAlong(survey.lines.get(lineId)!, road.xy).reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
}

function stretchesAlong(fence: LineShape, way: readonly Xy[]) {
  return stretchesWithin(fence, way, alongM).filter(({ fromM, toM }) => toM - fromM >= leastStretchM);
}
