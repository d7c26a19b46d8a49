import type { FaultSearchReading } from '../../model/faultSearchThings.ts';
import type { Project } from '../../model/project.ts';
import type { Section, Survey } from '../../survey/types.ts';
import { type Message, message } from '../../words/message.ts';
import type { FaultSearchGround } from './faultSearchGround.ts';
import type { FaultSearchStep } from './faultSearchWalk.ts';
import type { TestsLeft } from './testPlan.ts';

/** What a search says to the person who walks it. */

/** The name of a switch; null of one that is gone. */
export function switchName(project: Project, id: string): string | null {
  return project.switch.get(id)?.name ?? null;
}

export function switchesInWords(project: Project, ids: readonly string[]): Message {
  return message('locate.faultSearch.switches', { names: namesOf(project, ids) });
}

function namesOf(project: Project, ids: readonly string[]): (string | null)[] {
  return ids.map((id) => switchName(project, id));
}

/** "Open S4, close S2. Then read at S4, on the energiser’s side: start post of G7 on F2." */
export function stepInWords(step: FaultSearchStep, project: Project, survey: Survey): Message {
  const { switchId, openIds } = step;
  const handled = { toOpen: namesOf(project, step.toOpen), toClose: namesOf(project, step.toClose) };
  if (switchId === null) return message('locate.faultSearch.step.atEnergiser', handled);
  return message('locate.faultSearch.step.atSwitch', {
    ...handled,
    name: switchName(project, switchId),
    isOpen: openIds.includes(switchId),
    place: survey.switches.find((row) => row.switch.id === switchId)?.where ?? null,
  });
}

/** "S2 stays open." of what was opened before and is not touched for a step; null where there is nothing. */
export function staysOpenInWords({ openIds, toOpen }: FaultSearchStep, project: Project): Message | null {
  const staying = openIds.filter((id) => !toOpen.includes(id));
  if (staying.length === 0) return null;
  return message('locate.faultSearch.step.staysOpen', { names: namesOf(project, staying) });
}

/** "At most 3 tests are left, 2.1 as a rule." */
export function leftInWords({ most, expected }: TestsLeft): Message {
  return message('locate.faultSearch.left', { most, expected });
}

/** "S4: 2.1 kV, low (usual 8.1 kV, estimated)" */
export function readingInWords(reading: FaultSearchReading): Message {
  const { switchId, voltageV, result, doubtful, check, yardstick } = reading;
  const by = yardstick?.by;
  return message('locate.faultSearch.reading', {
    at: switchId === null ? null : reading.switchName,
    check,
    voltageV,
    result,
    doubtful,
    usualV: yardstick?.usualV || null,
    usualBy: by === 'estimate' || by === 'reading' ? by : null,
  });
}

/** What a piece is, with its letter where it is a section. */
export function pieceInWords(ground: FaultSearchGround, piece: number, { sections }: Survey): Message {
  const index = ground.pieces[piece]!.section;
  if (index !== null) return message('locate.faultSearch.piece.section', { letter: sections[index]!.letter });
  return message(piece === ground.source ? 'locate.faultSearch.piece.source' : 'locate.faultSearch.piece.cable');
}

/** What a section is made of: "F3 and F7 with G4"; the first few where there are many. */
export function sectionPlace(project: Project, { lineIds, gatewayIds }: Section): Message {
  return message('locate.faultSearch.madeOf', {
    lines: lineIds.map((id) => project.fenceLine.get(id)?.name ?? id),
    gateways: gatewayIds.map((id) => project.gateway.get(id)?.name ?? id),
  });
}
