import { projectOf } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { surveyOf } from '../../core/registers/survey.ts';
import type { Registers } from '../store/registerTable.ts';

/** What a file keeps of what is computed from it: its sections, and the lengths of its crossings. */
export function registersOf(things: readonly Thing[]): Registers {
  const project = projectOf(things);
  const { sections, crossings } = surveyOf(project);
  return {
    section: sections.map(({ letter, lengthM, gatewayIds, switchIds, fed }) => ({
      letter,
      fenceLengthM: lengthM,
      gateways: gatewayIds.length,
      switches: switchIds.map((id) => project.switch.get(id)?.name ?? id).join(', '),
      fed,
    })),
    crossing: [...crossings.values()].map(({ crossing, trenchM, pipeM, liveCableM, earthCableM }) => ({
      crossingId: crossing.id,
      trenchM,
      pipeM,
      liveCableM,
      earthCableM,
    })),
  };
}
