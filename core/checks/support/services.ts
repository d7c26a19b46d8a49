import type { Xy } from '../../geometry/types.ts';
import { keptWhile } from '../../model/memo.ts';
import type { Project } from '../../model/project.ts';
import type { Service } from '../../model/things.ts';
import { isPlaceOnEarth } from '../../shapes/workingPlane.ts';
import type { Survey } from '../../survey/types.ts';

/** A service in the working plane. */
export interface ServiceShape {
  readonly service: Service;
  readonly xy: readonly Xy[];
}

const shapeOf = keptWhile((service: Service, plane: Survey['plane']): ServiceShape | null => {
  if (service.path.length === 0 || !service.path.every(isPlaceOnEarth)) return null;
  return { service, xy: service.path.map(plane.toXy) };
});

/** Every service whose coordinates are places on earth. */
export function serviceShapes(project: Project, { plane }: Survey): ServiceShape[] {
  return [...project.service.values()].flatMap((service) => shapeOf(service, plane) ?? []);
}
