import type { HuntReading } from '../../model/huntThings.ts';
import type { Project } from '../../model/project.ts';
import type { Section, Survey } from '../../survey/types.ts';
import { fixed, formatVoltage } from '../../words/numbers/write.ts';
import { capital } from '../../words/text.ts';
import type { HuntGround } from './huntGround.ts';
import type { TestsLeft } from './huntPlan.ts';
import type { HuntStep } from './huntWalk.ts';

/** What a hunt says to the person who walks it. */

export function switchNames(project: Project, ids: readonly string[]): string {
  return ids.map((id) => switchName(project, id)).join(', ');
}

export function switchName(project: Project, id: string): string {
  return project.switch.get(id)?.name ?? 'a switch that is gone';
}

/** "Open S4, close S2. Then read at S4, on the energiser’s side: start post of G7 on F2." */
export function stepInWords(step: HuntStep, project: Project, survey: Survey): string {
  const { toOpen, toClose, switchId } = step;
  const handling = [
    toOpen.length > 0 ? `open ${switchNames(project, toOpen)}` : '',
    toClose.length > 0 ? `close ${switchNames(project, toClose)}` : '',
  ].filter(Boolean);
  const first = handling.length > 0 ? `${capital(handling.join(', '))}. Then read` : 'Read';
  if (switchId === null) return `${first} at the energiser, on the wire that leads out.`;
  const name = switchName(project, switchId);
  const place = survey.switches.find((row) => row.switch.id === switchId)?.placeText;
  const side = step.openIds.includes(switchId) ? `at ${name}, on the energiser’s side` : `at ${name}`;
  return `${first} ${side}${place ? `: ${place}` : ''}.`;
}

/** "S2 stays open." of what was opened before and is not touched for a step; empty where there is nothing. */
export function staysOpenInWords({ openIds, toOpen }: HuntStep, project: Project): string {
  const staying = openIds.filter((id) => !toOpen.includes(id));
  if (staying.length === 0) return '';
  return `${switchNames(project, staying)} ${staying.length === 1 ? 'stays' : 'stay'} open.`;
}

/** "At most 3 tests are left, 2.1 as a rule." */
export function leftInWords({ most, expected }: TestsLeft): string {
  if (most === 0) return 'No test is left.';
  if (most === 1) return 'One test is left.';
  return `At most ${most} tests are left, ${fixed(expected, 1)} as a rule.`;
}

const usualBy: Readonly<Record<string, string>> = { estimate: ', estimated', reading: ', as read before' };

/** "S4: 2.1 kV, low (usual 8.1 kV, estimated)" */
export function readingInWords({
  switchName: at,
  switchId,
  voltageV,
  result,
  doubtful,
  check,
  yardstick,
}: HuntReading): string {
  const place = switchId === null ? 'At the energiser' : at || 'At a switch';
  const figure = voltageV === null ? '' : `${formatVoltage(voltageV)}, `;
  const again =
    check === 'with' ? ' (to make sure, section fed)' : check === 'without' ? ' (to make sure, section cut off)' : '';
  const usual = yardstick?.usualV ? ` (usual ${formatVoltage(yardstick.usualV)}${usualBy[yardstick.by] ?? ''})` : '';
  return `${place}${again}: ${figure}${result}${doubtful ? ', doubtful' : ''}${usual}`;
}

/** What a piece is, with its letter where it is a section. */
export function pieceInWords(ground: HuntGround, piece: number, { sections }: Survey): string {
  const index = ground.pieces[piece]!.section;
  if (index !== null) return `section ${sections[index]!.letter}`;
  return piece === ground.source ? 'the energiser, its earth or its lead-out' : 'the cable between two switches';
}

/** What a section is made of: "F3, F7 with G4"; the first few where there are many. */
export function sectionPlace(project: Project, { lineIds, gatewayIds }: Section): string {
  const lines = firstFew(lineIds.map((id) => project.fenceLine.get(id)?.name ?? id));
  const gateways = firstFew(gatewayIds.map((id) => project.gateway.get(id)?.name ?? id));
  return [lines, gateways].filter(Boolean).join(' with ');
}

const few = 5;

function firstFew(names: readonly string[]): string {
  const more = names.length - few;
  return more > 1 ? `${names.slice(0, few).join(', ')} and ${more} more` : names.join(', ');
}
