import { propertyOf } from '../../model/project.ts';
import { measuredPath } from '../../shapes/measuredPath.ts';
import { message } from '../../words/message.ts';
import { measureOf, measureOfKind, workMeasure } from '../measures.ts';
import { cableMeasure, pipeMeasure } from './countGateways.ts';
import { counts, type TakeOffInput } from './input.ts';
import type { Tally } from './tally.ts';

/** What the places of a switch are called in keys. */
const placeKeys = { gateway: 'gateway', lineEnd: 'takeOff', line: 'run', leadOut: 'leadOut' } as const;

export function countSwitches(input: TakeOffInput, tally: Tally): void {
  for (const cutOut of input.project.switch.values()) {
    if (!counts(input, cutOut.status)) continue;
    const { on } = cutOut.place;
    const whole = message('order.pieces.whole', { name: cutOut.name });
    tally.add(measureOfKind('switch', placeKeys[on], message(`order.goods.switch.${on}`)), [cutOut.id], 1, whole);
    tally.add(workMeasure('switch'), [cutOut.id], 1, whole);
  }
}

/**
 * Energisers with their lead-outs and earth. A lead-out takes the spare length of the property's crossings at both
 * ends, a buried one a pipe of their bore as well; the earth lead goes from the energiser past every stake.
 */
export function countSupply(input: TakeOffInput, tally: Tally): void {
  const { project } = input;
  const { crossings } = propertyOf(project);
  for (const { id, name, status } of project.energiser.values()) {
    if (!counts(input, status)) continue;
    const whole = message('order.pieces.whole', { name });
    tally.add(measureOf('energiser'), [id], 1, whole);
    tally.add(measureOf('surge'), [id], 1, whole);
    tally.add(workMeasure('energiser'), [id], 1, whole);
  }
  for (const { id, name, status, path, cableId, buried } of project.leadOut.values()) {
    const geometry = measuredPath(path, input.survey.plane);
    if (!geometry || !counts(input, status)) continue;
    const { lengthM } = geometry;
    const whole = message('order.pieces.leadOut', { name });
    const bothEnds = message('order.pieces.leadOutEnds', { name });
    tally.add(cableMeasure(input, cableId), [id], lengthM + 2 * crossings.tailM, whole);
    tally.add(measureOf('cableClamp'), [id], 1, message('order.pieces.leadOutAtFence', { name }));
    tally.add(measureOf('lug'), [id], 2, bothEnds);
    if (!buried) continue;
    tally.add(pipeMeasure(crossings.pipeBoreMm), [id], lengthM + crossings.allowanceM, whole);
    tally.add(measureOf('seal'), [id], 2, bothEnds);
    tally.add(workMeasure('trenchM'), [id], lengthM, whole);
  }
  for (const { id, energiserId, at, rods, rodLengthM, spacingM, status } of project.earthField.values()) {
    if (!counts(input, status)) continue;
    const energiser = project.energiser.get(energiserId);
    const of = { energiser: energiser?.name ?? null };
    const stake = measureOfKind('stake', rodLengthM, message('order.goods.stake', { lengthM: rodLengthM }));
    tally.add(stake, [id], rods, message('order.pieces.earthStakes', { ...of, count: rods }));
    tally.add(measureOf('stakeClamp'), [id], rods, message('order.pieces.earthClamps', of));
    tally.add(workMeasure('stake'), [id], rods, message('order.pieces.earth', of));
    const leadM =
      (energiser ? input.survey.plane.earth.distanceM(energiser.at, at) : 0) +
      (rods - 1) * spacingM +
      2 * crossings.tailM;
    tally.add(measureOf('earthLead'), [id], leadM, message('order.pieces.earthLead', { ...of, count: rods }));
  }
}
