import { crossingAt } from '../locate/crossingAsBuilt.ts';
import type { Project } from '../model/project.ts';
import type { BuildableThing } from '../model/recordThings.ts';
import type { LonLat } from '../model/things.ts';
import type { Survey } from '../survey/types.ts';

/** Where a thing is: its path, a gateway's two posts, or its one place. A crossing by its record, as far as it has one. */
export function placesOf(thing: BuildableThing, project: Project, survey: Survey): readonly LonLat[] {
  switch (thing.kind) {
    case 'fenceLine':
    case 'leadOut':
      return thing.path;
    case 'gateway': {
      const shape = survey.gateways.get(thing.id);
      return shape ? [shape.startPostAt, shape.endPostAt] : [];
    }
    case 'crossing': {
      const path = crossingAt(project, survey, thing.gatewayId)?.path ?? survey.crossings.get(thing.gatewayId)?.path;
      return (path ?? []).map(survey.plane.toLonLat);
    }
    case 'switch': {
      const row = survey.switches.find((each) => each.switch.id === thing.id);
      return row ? [row.at] : [];
    }
    default:
      return [thing.at];
  }
}

/** What people call a thing: its name, or that of the gateway or energiser that it belongs to. */
export function nameOf(thing: BuildableThing, project: Project): string {
  switch (thing.kind) {
    case 'crossing':
      return `crossing at ${project.gateway.get(thing.gatewayId)?.name ?? 'a gateway that is gone'}`;
    case 'earthField':
      return `earth stakes of ${project.energiser.get(thing.energiserId)?.name ?? 'an energiser that is gone'}`;
    default:
      return thing.name;
  }
}
