import { crossingAt } from '../locate/crossingAsBuilt.ts';
import type { Project } from '../model/project.ts';
import type { BuildableThing } from '../model/recordThings.ts';
import type { LonLat } from '../model/things.ts';
import type { Survey } from '../survey/types.ts';
import { type Message, message } from '../words/message.ts';

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
export function nameOf(thing: BuildableThing, project: Project): Message {
  switch (thing.kind) {
    case 'crossing':
      return message('record.names.crossing', { gateway: project.gateway.get(thing.gatewayId)?.name ?? null });
    case 'earthField':
      return message('record.names.earthStakes', {
        energiser: project.energiser.get(thing.energiserId)?.name ?? null,
      });
    default:
      return message('record.names.named', { name: thing.name });
  }
}
