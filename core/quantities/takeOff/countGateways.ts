import { propertyOf } from '../../model/project.ts';
import type { Gateway } from '../../model/things.ts';
import type { CrossingFigures } from '../../shapes/types.ts';
import { formatTape } from '../../words/numbers/write.ts';
import { measureOf, workMeasure } from '../measures.ts';
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
    if (counts(input, gateway.status)) countGateway(input, gateway, tally);
    const figures = input.survey.crossings.get(gateway.id);
    if (figures && counts(input, figures.crossing.status)) countCrossing(input, figures, tally);
  }
  return notCounted;
}

function countGateway({ project }: TakeOffInput, gateway: Gateway, tally: Tally): void {
  const leafM = gateway.widthM / gateway.leaves;
  const width = formatTape(leafM, propertyOf(project).units);
  for (const hand of handsOf(gateway)) {
    tally.add(measureOf('gate', leafM.toFixed(2), `${width}`), [gateway.id], 1, `${gateway.name}: ${hand}`);
  }
  const detail = gateway.leaves === 2 ? 'double' : 'single';
  tally.add(measureOf('gateway', detail, detail), [gateway.id], 1, gateway.name);
  tally.add(workMeasure('gateway'), [gateway.id], 1, gateway.name);
}

/**
 * The hand of each leaf: the side its hinges are on for somebody who pushes it open. Looking along the line from its
 * start, a gate that opens to the left is pushed from the right, with the start post on the left.
 */
export function handsOf({ leaves, hungFrom, opens }: Pick<Gateway, 'leaves' | 'hungFrom' | 'opens'>): string[] {
  if (leaves === 2) return ['hinged left', 'hinged right'];
  return [(hungFrom === 'start') === (opens === 'left') ? 'hinged left' : 'hinged right'];
}

function countCrossing(input: TakeOffInput, figures: CrossingFigures, tally: Tally): void {
  const { crossing, gateway } = figures;
  const owner = [gateway.id];
  const { name } = gateway;
  const line = input.survey.lines.get(gateway.lineId);
  const liveWires = Math.max(1, line?.type?.liveWires ?? 1);
  const buried = crossing.method === 'buried';
  if (buried) {
    tally.add(pipeMeasure(crossing.pipeBoreMm), owner, figures.pipeM, name);
    tally.add(measureOf('seal'), owner, 2, `${name}: both risers`);
    tally.add(workMeasure('trenchM'), owner, figures.trenchM, name);
  }
  tally.add(cableMeasure(input, crossing.cableId), owner, figures.liveCableM, name);
  tally.add(measureOf('earthCable'), owner, figures.earthCableM, name);
  const clamps = Math.ceil(liveWires / wiresPerClamp);
  tally.add(measureOf('cableClamp'), owner, 2 * clamps, `${name}: both ends, ${liveWires} live wires`);
  if (crossing.earth) tally.add(measureOf('earthClamp'), owner, 2, `${name}: both ends`);
  const cables = crossing.earth ? 2 : 1;
  tally.add(
    measureOf('lug'),
    owner,
    2 * cables,
    `${name}: both ends of ${cables === 2 ? 'live and earth cable' : 'the live cable'}`,
  );
  tally.add(workMeasure('crossing'), owner, 1, name);
}

export const pipeMeasure = (boreMm: number) => measureOf('pipe', boreMm, `${boreMm} mm bore`);

export const cableMeasure = (input: TakeOffInput, cableId: string) =>
  measureOf('cable', cableId, conductorName(input, cableId));
