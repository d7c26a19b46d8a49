import { message } from '../../../words/message.ts';
import type { Project } from '../../project.ts';
import { refTo } from '../../refTo.ts';
import type { CutOutSwitch, SwitchPlace } from '../../things.ts';
import type { Refusal } from './edit.ts';
import { found, whyNotFound } from './find.ts';
import { pathIn, sameVertexM } from './path.ts';

/** Whether two places are one. */
export function samePlace(a: SwitchPlace, b: SwitchPlace): boolean {
  if (a.on === 'gateway') return b.on === 'gateway' && a.gatewayId === b.gatewayId && a.post === b.post;
  if (a.on === 'lineEnd') return b.on === 'lineEnd' && a.lineId === b.lineId && a.end === b.end;
  if (a.on === 'leadOut') return b.on === 'leadOut' && a.leadOutId === b.leadOutId;
  return b.on === 'line' && a.lineId === b.lineId && Math.abs(a.atM - b.atM) <= sameVertexM;
}

/** The switch at a place, if one is there (other than `exceptId`). */
export function switchAt(project: Project, place: SwitchPlace, exceptId: string | null = null): CutOutSwitch | null {
  for (const other of project.switch.values()) {
    if (other.id !== exceptId && samePlace(other.place, place)) return other;
  }
  return null;
}

/** `notFound`, `offLine`, `insideGateway`, `notLive`, `placeTaken`. */
export function whyNotSwitchPlace(
  project: Project,
  place: SwitchPlace,
  exceptId: string | null = null,
): Refusal | null {
  const refusal = whyNotThere(project, place);
  if (refusal) return refusal;
  const other = switchAt(project, place, exceptId);
  if (!other) return null;
  return { code: 'placeTaken', message: message('edits.switches.placeTaken', { other: refTo(other) }) };
}

function whyNotThere(project: Project, place: SwitchPlace): Refusal | null {
  if (place.on === 'leadOut') return whyNotFound(project, 'leadOut', place.leadOutId);
  if (place.on === 'gateway') {
    const missing = whyNotFound(project, 'gateway', place.gatewayId);
    return missing ?? whyNotLive(project, found(project, 'gateway', place.gatewayId).lineId);
  }
  const missing = whyNotFound(project, 'fenceLine', place.lineId) ?? whyNotLive(project, place.lineId);
  return missing ?? (place.on === 'line' ? whyNotStation(project, place.lineId, place.atM) : null);
}

function whyNotLive(project: Project, lineId: string): Refusal | null {
  const line = found(project, 'fenceLine', lineId);
  if (line.live) return null;
  return { code: 'notLive', message: message('edits.switches.notLive', { line: refTo(line) }) };
}

/** Why nothing can stand at this station of a line. */
export function whyNotStation(project: Project, lineId: string, atM: number): Refusal | null {
  const line = found(project, 'fenceLine', lineId);
  const { lengthM } = pathIn(project, line.path);
  if (!(atM >= 0 && atM <= lengthM)) {
    return { code: 'offLine', message: message('edits.switches.offLine', { line: refTo(line), lengthM }) };
  }
  for (const gateway of project.gateway.values()) {
    if (gateway.lineId !== lineId || Math.abs(gateway.atM - atM) >= gateway.widthM / 2 - sameVertexM) continue;
    return {
      code: 'insideGateway',
      message: message('edits.switches.insideGateway', { gateway: refTo(gateway) }),
    };
  }
  return null;
}
