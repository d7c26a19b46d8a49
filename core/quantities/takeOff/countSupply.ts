import { propertyOf } from '../../model/project.ts';
import type { CutOutSwitch } from '../../model/things.ts';
import { measuredPath } from '../../shapes/measuredPath.ts';
import { formatTape } from '../../words/numbers/write.ts';
import { measureOf, workMeasure } from '../measures.ts';
import { cableMeasure, pipeMeasure } from './countGateways.ts';
import { counts, type TakeOffInput } from './input.ts';
import type { Tally } from './tally.ts';

const placeWords: Readonly<Record<CutOutSwitch['place']['on'], readonly [kind: string, detail: string]>> = {
  gateway: ['gateway', 'at a gateway'],
  lineEnd: ['takeOff', 'at a take-off'],
  line: ['run', 'along a run'],
  leadOut: ['leadOut', 'at the lead-out'],
};

export function countSwitches(input: TakeOffInput, tally: Tally): void {
  for (const cutOut of input.project.switch.values()) {
    if (!counts(input, cutOut.status)) continue;
    tally.add(measureOf('switch', ...placeWords[cutOut.place.on]), [cutOut.id], 1, cutOut.name);
    tally.add(workMeasure('switch'), [cutOut.id], 1, cutOut.name);
  }
}

/**
 * Energisers with their lead-outs and earth. A lead-out takes the spare length of the property's crossings at both
 * ends, a buried one a pipe of their bore as well; the earth lead goes from the energiser past every stake.
 */
export function countSupply(input: TakeOffInput, tally: Tally): void {
  const { project } = input;
  const { crossings, units } = propertyOf(project);
  for (const { id, name, status } of project.energiser.values()) {
    if (!counts(input, status)) continue;
    tally.add(measureOf('energiser'), [id], 1, name);
    tally.add(measureOf('surge'), [id], 1, name);
    tally.add(workMeasure('energiser'), [id], 1, name);
  }
  for (const { id, name, status, path, cableId, buried } of project.leadOut.values()) {
    const geometry = measuredPath(path, input.survey.plane);
    if (!geometry || !counts(input, status)) continue;
    const { lengthM } = geometry;
    tally.add(cableMeasure(input, cableId), [id], lengthM + 2 * crossings.tailM, `lead-out ${name}`);
    tally.add(measureOf('cableClamp'), [id], 1, `lead-out ${name}, at the fence`);
    tally.add(measureOf('lug'), [id], 2, `lead-out ${name}: both ends`);
    if (!buried) continue;
    tally.add(pipeMeasure(crossings.pipeBoreMm), [id], lengthM + crossings.allowanceM, `lead-out ${name}`);
    tally.add(measureOf('seal'), [id], 2, `lead-out ${name}: both ends`);
    tally.add(workMeasure('trenchM'), [id], lengthM, `lead-out ${name}`);
  }
  for (const { id, energiserId, at, rods, rodLengthM, spacingM, status } of project.earthField.values()) {
    if (!counts(input, status)) continue;
    const energiser = project.energiser.get(energiserId);
    const name = `earth of ${energiser?.name ?? 'an energiser'}`;
    const stake = measureOf('stake', rodLengthM, formatTape(rodLengthM, units));
    tally.add(stake, [id], rods, `${name}: ${rods} stakes`);
    tally.add(measureOf('stakeClamp'), [id], rods, `${name}: one for each stake`);
    tally.add(workMeasure('stake'), [id], rods, name);
    const leadM =
      (energiser ? input.survey.plane.earth.distanceM(energiser.at, at) : 0) +
      (rods - 1) * spacingM +
      2 * crossings.tailM;
    tally.add(measureOf('earthLead'), [id], leadM, `${name}: to the field and along ${rods} stakes`);
  }
}
