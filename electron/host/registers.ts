import { leftThing } from '../../core/locate/buriedThings.ts';
import { leftInGround } from '../../core/locate/inGround/leftInGround.ts';
import { leftWithinM } from '../../core/locate/inGround/leftWithin.ts';
import { projectOf } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { plainWords } from '../../core/words/figures.ts';
import type { Registers } from '../store/registerTable.ts';

/**
 * What a file keeps of what is computed from it: its sections, the lengths of its crossings, and where lies what was left
 * in the ground.
 */
export function registersOf(things: readonly Thing[]): Registers {
  const project = projectOf(things);
  const survey = surveyOf(project);
  const { sections, crossings, plane } = survey;
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
    inGround: leftInGround(project, survey).map((left) => {
      const { path } = left;
      const places = [path[0], path[path.length >> 1], path.at(-1)].map((xy) => (xy ? plane.toLonLat(xy) : null));
      return {
        id: left.thing.id,
        from: places[0],
        middle: places[1],
        to: places[2],
        knownBy: plainWords().locate.basis[leftThing(left).basis],
        withinM: leftWithinM(left),
      };
    }),
  };
}
