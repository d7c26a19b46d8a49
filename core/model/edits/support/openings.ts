import { turnAngleDeg } from '../../../geometry/vector.ts';
import { lonLatAt, placeAt } from '../../../shapes/measuredPath.ts';
import { message } from '../../../words/message.ts';
import { largestOf } from '../../extremes.ts';
import { type Project, propertyOf } from '../../project.ts';
import { refTo } from '../../refTo.ts';
import type { FenceLine, Gateway } from '../../things.ts';
import type { Refusal } from './edit.ts';
import { touching } from './joins.ts';
import { pathIn } from './path.ts';

/** Room along a fence line: openings that stand on it, and points where other lines join it. */

/** An opening is straight; a line may bend this much within it (a track walked with a receiver is never quite straight). */
const mostBendDeg = 20;

/** Posts may stand exactly at an end or at another gateway's post. */
const slackM = 0.001;

export interface Opening {
  readonly atM: number;
  readonly widthM: number;
  /** The gateway that is being moved or widened does not stand in its own way. */
  readonly except?: string;
}

/** `noWidth`, `offLine`, `tooWide`, `overlaps`, `runTooShort`, `lineJoinsInside`, `acrossCorner`. */
export function whyNotOpening(project: Project, line: FenceLine, opening: Opening): Refusal | null {
  const { atM, widthM } = opening;
  if (!(widthM > 0) || !Number.isFinite(widthM) || !Number.isFinite(atM)) {
    return { code: 'noWidth', message: message('edits.openings.noWidth') };
  }
  const { lengthM } = pathIn(project, line.path);
  if (widthM > lengthM + slackM) {
    const values = { line: refTo(line), widthM, lengthM };
    return { code: 'tooWide', message: message('edits.openings.tooWide', values) };
  }
  if (atM < -slackM || atM > lengthM + slackM) {
    return { code: 'offLine', message: message('edits.openings.offLine', { line: refTo(line), lengthM }) };
  }
  const [fromM, toM] = [atM - widthM / 2, atM + widthM / 2];
  if (fromM < -slackM || toM > lengthM + slackM) {
    const end = fromM < 0 ? 'start' : 'end';
    const values = { line: refTo(line), end, byM: fromM < 0 ? -fromM : toM - lengthM } as const;
    return { code: 'offLine', message: message('edits.openings.pastEnd', values) };
  }
  const other = overlapping(project, line.id, opening);
  if (other) {
    return { code: 'overlaps', message: message('edits.openings.overlaps', { other: refTo(other) }) };
  }
  return whyNotBetweenJoins(project, line, fromM, toM) ?? whyNotStraight(project, line, fromM, toM);
}

function overlapping(project: Project, lineId: string, { atM, widthM, except }: Opening): Gateway | null {
  for (const gateway of project.gateway.values()) {
    if (gateway.lineId !== lineId || gateway.id === except) continue;
    if (Math.abs(gateway.atM - atM) < (gateway.widthM + widthM) / 2 - slackM) return gateway;
  }
  return null;
}

function whyNotBetweenJoins(project: Project, line: FenceLine, fromM: number, toM: number): Refusal | null {
  const { snapToleranceM } = propertyOf(project);
  const widthM = toM - fromM;
  const joinsM = joinsBetween(project, line, fromM - widthM, toM + widthM);
  const inside = joinsM.filter((atM) => atM > fromM + snapToleranceM && atM < toM - snapToleranceM);
  if (inside.length === 0) return null;
  const nextGapM = Math.max(largestOf(inside.slice(1).map((atM, i) => atM - inside[i]!)), 0);
  if (inside.length > 1 && nextGapM < widthM) {
    return { code: 'runTooShort', message: message('edits.openings.runTooShort', { runM: nextGapM, widthM }) };
  }
  return { code: 'lineJoinsInside', message: message('edits.openings.lineJoinsInside', { line: refTo(line) }) };
}

/** Stations between `fromM` and `toM` where vertices of other lines touch this line, in order. */
function joinsBetween(project: Project, line: FenceLine, fromM: number, toM: number): number[] {
  const whole = pathIn(project, line.path);
  const { stationsM } = whole;
  const stations: number[] = [];
  for (let i = 0; i + 1 < line.path.length; i++) {
    const [startM, endM] = [stationsM[i]!, stationsM[i + 1]!];
    if (endM < fromM || startM > toM || endM === startM) continue;
    const share = (atM: number) => Math.min(endM, Math.max(startM, atM));
    const [clipFromM, clipToM] = [share(fromM), share(toM)];
    const a = lonLatAt(whole, clipFromM);
    const b = lonLatAt(whole, clipToM);
    const shareOf = touching(project, a, b);
    for (const other of project.fenceLine.values()) {
      if (other.id === line.id) continue;
      for (const vertex of other.path) {
        const at = shareOf(vertex);
        if (at !== null) stations.push(clipFromM + at * (clipToM - clipFromM));
      }
    }
  }
  return stations.sort((a, b) => a - b);
}

function whyNotStraight(project: Project, line: FenceLine, fromM: number, toM: number): Refusal | null {
  const whole = pathIn(project, line.path);
  const first = placeAt(whole, fromM + slackM).segment;
  const last = placeAt(whole, toM - slackM).segment;
  let bendDeg = 0;
  for (let vertex = first + 1; vertex <= last; vertex++) {
    const [before, here, after] = whole.xy.slice(vertex - 1, vertex + 2);
    bendDeg += Math.abs(turnAngleDeg(before!, here!, after!));
  }
  if (bendDeg <= mostBendDeg) return null;
  return { code: 'acrossCorner', message: message('edits.openings.acrossCorner', { line: refTo(line), bendDeg }) };
}
