import type { Gateway } from '../../model/things.ts';
import type { CrossingFigures } from '../../shapes/types.ts';
import { message } from '../../words/message.ts';
import { measureOf, measureOfKind, workMeasure } from '../measures.ts';
import type { NotCounted } from '../types.ts';
import { conductorName } from './countFence.ts';
import { counts, type TakeOffInput } from './input.ts';
import type { Tally } from './tally.ts';

/** A clamp joins the cable to up to about four wires at once; common practice, no source. */
const wiresPerClamp = 4;

/** Leaves by width and hand, hardware for each gateway, and all that its crossing takes. */
export function countGateways(input: TakeOffInput, tally: Tally): NotCounted[] {
  const notCounted: NotCounted[] = [];
  for (const { gateway, fromM, toM } of input.survey.gateways.values()) {
    if (toM <= fromM) {
      notCounted.push({ code: 'gatewayWithoutOpening', thingId: gateway.id, name: gateway.name });
      continue;
    }
    if (counts(input, gateway.status)) countGateway(gateway, tally);
    const figures = input.survey.crossings.get(gateway.id);
    if (figures && counts(input, figures.crossing.status)) countCrossing(input, figures, tally);
  }
  return notCounted;
}

function countGateway(gateway: Gateway, tally: Tally): void {
  const { id, name, leaves, widthM } = gateway;
  const leafM = widthM / leaves;
  const leaf = measureOfKind('gate', leafM.toFixed(2), message('order.goods.gate', { leafM }));
  for (const hand of handsOf(gateway)) {
    tally.add(leaf, [id], 1, message(`order.pieces.hinged.${hand}`, { gateway: name }));
  }
  const kind = leaves === 2 ? 'double' : 'single';
  const whole = message('order.pieces.whole', { name });
  tally.add(measureOfKind('gateway', kind, message(`order.goods.gateway.${kind}`)), [id], 1, whole);
  tally.add(workMeasure('gateway'), [id], 1, whole);
}

/**
 * The hand of each leaf: the side its hinges are on for somebody who pushes it open. Looking along the line from its
 * start, a gate that opens to the left is pushed from the right, with the start post on the left.
 */
export function handsOf({
  leaves,
  hungFrom,
  opens,
}: Pick<Gateway, 'leaves' | 'hungFrom' | 'opens'>): ('left' | 'right')[] {
  if (leaves === 2) return ['left', 'right'];
  return [(hungFrom === 'start') === (opens === 'left') ? 'left' : 'right'];
}

function countCrossing(input: TakeOffInput, figures: CrossingFigures, tally: Tally): void {
  const { crossing, gateway } = figures;
  const owner = [gateway.id];
  const said = { gateway: gateway.name };
  const whole = message('order.pieces.whole', { name: gateway.name });
  const line = input.survey.lines.get(gateway.lineId);
  const count = Math.max(1, line?.type?.liveWires ?? 1);
  const buried = crossing.method === 'buried';
  if (buried) {
    tally.add(pipeMeasure(crossing.pipeBoreMm), owner, figures.pipeM, whole);
    tally.add(measureOf('seal'), owner, 2, message('order.pieces.risers', said));
    tally.add(workMeasure('trenchM'), owner, figures.trenchM, whole);
  }
  tally.add(cableMeasure(input, crossing.cableId), owner, figures.liveCableM, whole);
  tally.add(measureOf('earthCable'), owner, figures.earthCableM, whole);
  const clamps = Math.ceil(count / wiresPerClamp);
  tally.add(measureOf('cableClamp'), owner, 2 * clamps, message('order.pieces.endsOfWires', { ...said, count }));
  if (crossing.earth) tally.add(measureOf('earthClamp'), owner, 2, message('order.pieces.ends', said));
  const lugs = crossing.earth ? 4 : 2;
  tally.add(
    measureOf('lug'),
    owner,
    lugs,
    message(`order.pieces.${crossing.earth ? 'endsOfBoth' : 'endsOfLive'}`, said),
  );
  tally.add(workMeasure('crossing'), owner, 1, whole);
}

export const pipeMeasure = (boreMm: number) => measureOfKind('pipe', boreMm, message('order.goods.pipe', { boreMm }));

export const cableMeasure = (input: TakeOffInput, cableId: string) =>
  measureOfKind('cable', cableId, conductorName(input, cableId));
