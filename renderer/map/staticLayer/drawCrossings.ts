import type { Item } from '../../../core/drawing/displayList.ts';
import { crossingSign } from '../../../core/drawing/signs/crossingSign.ts';
import { leadOutStroke } from '../../../core/drawing/strokes/buried.ts';
import { isInTheGround } from '../../../core/locate/inTheGround.ts';
import type { CrossingPart, LeadOutPart } from '../scene/parts.ts';
import type { Look } from './look.ts';
import { pixelPath, pixelTraces } from './pixelPath.ts';

/** Crossings narrower than this are not drawn: their gateway's bars stand for them. */
const leastPx = 6;
const portion = 100;

/** Cables past the gateways. */
export function* drawCrossings(look: Look, parts: readonly CrossingPart[]): Generator<Item[]> {
  for (let i = 0; i < parts.length; i += portion) {
    yield parts.slice(i, i + portion).flatMap((part) => crossing(look, part));
  }
}

function crossing({ view, pen, input }: Look, { figures }: CrossingPart): readonly Item[] {
  if (figures.chordM * view.pxPerM < leastPx) return [];
  const { method, status } = figures.crossing;
  const built = isInTheGround(input.project, figures.crossing);
  return crossingSign(pixelPath(view, figures.path), { method, status: built ? 'built' : status }, pen).items;
}

/** Insulated cable from an energiser to the fence. */
export function drawLeadOuts({ view, pen }: Look, parts: readonly LeadOutPart[]): Item[] {
  return parts.map(({ leadOut, xy }) => pixelTraces(view, [xy], leadOutStroke(leadOut, pen)));
}
