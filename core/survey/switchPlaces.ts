import type { LocalPlane } from '../geometry/localPlane.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import { scale, subtract, unit } from '../geometry/vector.ts';
import type { Project } from '../model/project.ts';
import type { SwitchPlace } from '../model/things.ts';
import { gatewaySpan } from '../shapes/gatewaySpan.ts';
import { directionAt, lonLatAt, type MeasuredPath, measuredPath, wrapStation, xyAt } from '../shapes/measuredPath.ts';
import { isPlaceOnEarth } from '../shapes/workingPlane.ts';
import { type Message, message } from '../words/message.ts';

/** Where a switch stands, or would. */
export interface SwitchSpot {
  readonly xy: Xy;
  readonly at: LonLat;
  /** Unit vector along the fence from the switch edge's `from` side to its `to` side. */
  readonly along: Xy;
}

/** The spot of a place, whether the network can use it or not; null where what it names is not there. */
export function switchSpot(project: Project, plane: LocalPlane, place: SwitchPlace): SwitchSpot | null {
  if (place.on === 'leadOut') return leadOutSpot(project, plane, place.leadOutId);
  if (place.on === 'gateway') {
    const gateway = project.gateway.get(place.gatewayId);
    const geometry = gateway && geometryOfLine(project, plane, gateway.lineId);
    if (!geometry) return null;
    const span = gatewaySpan(gateway, geometry);
    const stationM = wrapStation(place.post === 'start' ? span.fromM : span.toM, geometry);
    return spotAt(geometry, stationM, place.post === 'start' ? 1 : -1);
  }
  const geometry = geometryOfLine(project, plane, place.lineId);
  if (!geometry) return null;
  if (place.on === 'line') return Number.isFinite(place.atM) ? spotAt(geometry, place.atM, 1) : null;
  return place.end === 'start' ? spotAt(geometry, 0, -1) : spotAt(geometry, geometry.lengthM, 1);
}

/** Geometry of a line; null where it is gone or no place on earth. */
export function geometryOfLine(project: Project, plane: LocalPlane, lineId: string): MeasuredPath | null {
  const line = project.fenceLine.get(lineId);
  return line ? measuredPath(line.path, plane) : null;
}

function spotAt(geometry: MeasuredPath, stationM: number, sense: 1 | -1): SwitchSpot {
  const along = scale(directionAt(geometry, stationM), sense);
  return { xy: xyAt(geometry, stationM), at: lonLatAt(geometry, stationM), along };
}

function leadOutSpot(project: Project, plane: LocalPlane, leadOutId: string): SwitchSpot | null {
  const path = project.leadOut.get(leadOutId)?.path ?? [];
  const at = path.at(-1);
  if (!isPlaceOnEarth(at)) return null;
  const before = path.at(-2);
  const xy = plane.toXy(at);
  return { xy, at, along: isPlaceOnEarth(before) ? unit(subtract(xy, plane.toXy(before))) : [0, 0] };
}

/** Where that is: "start post of G4 on F2", "start of F7 at F2", "F3, 210 m from its start", "lead-out L1". */
export function placeInWords(project: Project, place: SwitchPlace, joinedTo: readonly string[] = []): Message {
  const nameOfLine = (id: string): string | null => project.fenceLine.get(id)?.name ?? null;
  switch (place.on) {
    case 'gateway': {
      const gateway = project.gateway.get(place.gatewayId);
      if (!gateway) return message('survey.switches.place.gatewayGone');
      const { name, lineId } = gateway;
      return message('survey.switches.place.gateway', { post: place.post, gateway: name, line: nameOfLine(lineId) });
    }
    case 'lineEnd': {
      const joined = joinedTo.filter((id) => id !== place.lineId).map(nameOfLine);
      return message('survey.switches.place.lineEnd', { end: place.end, line: nameOfLine(place.lineId), joined });
    }
    case 'line':
      return message('survey.switches.place.line', { line: nameOfLine(place.lineId), atM: place.atM });
    case 'leadOut': {
      const name = project.leadOut.get(place.leadOutId)?.name;
      return name === undefined
        ? message('survey.switches.place.leadOutGone')
        : message('survey.switches.place.leadOut', { name });
    }
  }
}
