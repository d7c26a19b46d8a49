import { moveGateway } from '../../../../core/model/edits/moveGateway.ts';
import { moveSwitch } from '../../../../core/model/edits/moveSwitch.ts';
import { moveThing } from '../../../../core/model/edits/moveThing.ts';
import { moveVertex } from '../../../../core/model/edits/moveVertex.ts';
import type { Project } from '../../../../core/model/project.ts';
import type { LonLat } from '../../../../core/model/things.ts';
import type { MapEdit } from '../../mapTypes.ts';
import type { ToolContext } from '../tool.ts';

const bearings: Readonly<Record<string, number>> = { ArrowUp: 0, ArrowRight: 90, ArrowDown: 180, ArrowLeft: 270 };

export const isArrow = (key: string): boolean => key in bearings;

/** What the arrow keys move. */
export interface Nudged {
  readonly id: string;
  readonly vertex: number | null;
}

/**
 * The edit that moves a thing a little way in an arrow's direction, or null for what arrows don't move. It reads where
 * the thing is when it is applied, so that a held key adds up. Gateways, and switches along a line, go along their
 * line: right and up towards its end. All steps of one thing are one step of undo.
 */
export function nudge(context: ToolContext, { id, vertex }: Nudged, arrow: string, stepM: number): MapEdit | null {
  const scene = context.scene();
  const words = context.words().choose;
  const bearingDeg = bearings[arrow];
  if (bearingDeg === undefined) return null;
  const away = (at: LonLat) => scene.survey.plane.earth.destination(at, bearingDeg, stepM);
  const onward = bearingDeg <= 90 ? stepM : -stepM;
  const part = scene.partsOf.get(id)?.[0];
  const mergeKey = `nudge ${id} ${vertex ?? ''}`;
  switch (part?.kind) {
    case 'piece': {
      if (vertex === null) return null;
      const apply = (project: Project) => {
        const at = project.fenceLine.get(id)?.path[vertex];
        return at ? moveVertex({ lineId: id, index: vertex, to: away(at) })(project) : project;
      };
      return { label: words.moveCorner({ name: part.shape.line.name }), apply, mergeKey };
    }
    case 'gateway': {
      const apply = (project: Project) => {
        const gateway = project.gateway.get(id);
        return gateway ? moveGateway({ gatewayId: id, atM: gateway.atM + onward })(project) : project;
      };
      return { label: words.moveGateway({ name: part.shape.gateway.name }), apply, mergeKey };
    }
    case 'switch': {
      const apply = (project: Project) => {
        const place = project.switch.get(id)?.place;
        if (place?.on !== 'line') return project;
        return moveSwitch({ switchId: id, place: { ...place, atM: place.atM + onward } })(project);
      };
      if (part.row.switch.place.on !== 'line') return null;
      return { label: words.moveSwitch({ name: part.row.switch.name }), apply, mergeKey };
    }
    case 'post':
    case 'energiser':
    case 'earthField': {
      const { kind } = part;
      const apply = (project: Project) => {
        const at = project[kind].get(id)?.at;
        return at ? moveThing({ kind, id, to: away(at) })(project) : project;
      };
      return { label: kind === 'earthField' ? words.moveEarthField : words.moveOne({ kind }), apply, mergeKey };
    }
    default:
      return null;
  }
}
