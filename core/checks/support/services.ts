import type { Xy } from '../../geometry/types.ts';
import type { Project } from '../../model/project.ts';
import type { Service } from '../../model/things.ts';
import { isPlaceOnEarth } from '../../shapes/workingPlane.ts';
import type { Survey } from '../../survey/types.ts';

/** A service in the working plane. */
export interface ServiceShape {
  readonly service: Service;
  readonly xy: readonly Xy[];
}

const kept = new WeakMap<Service, { readonly plane: Survey['plane']; readonly shape: ServiceShape }>();

/** Every service whose coordinates are places on earth. */
export function serviceShapes(project: Project, { plane }: Survey): ServiceShape[] {
  return [...project.service.values()].flatMap((service) => {
    const known = kept.get(service);
    if (known?.plane === plane) return [known.shape];
    if (service.path.length === 0 || !service.path.every(isPlaceOnEarth)) return [];
    const shape = { service, xy: service.path.map(plane.toXy) };
    kept.set(service, { plane, shape });
    return [shape];
  });
}
