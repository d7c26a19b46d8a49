import { switchPlaceSign } from '../../../core/drawing/signs/switchSign.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { addCandidatePlace } from '../../../core/model/edits/addCandidatePlace.ts';
import { directionAt } from '../../../core/shapes/measuredPath.ts';
import { type Message, message } from '../../../core/words/message.ts';
import { paintItems } from '../canvas/paintItems.ts';
import { drawTag } from '../interaction/cues.ts';
import { markedPen } from '../plane/screenPen.ts';
import { toPx } from '../plane/view.ts';
import { nearestLine } from './nearestLine.ts';
import { lineReachPx } from './reach.ts';
import { stableIds } from './stableIds.ts';
import { noProgress, type Pointer, type Tool, type ToolContext } from './tool.ts';

/** A place along a live fence, as the pointer means it. */
interface PlaceOffer {
  readonly lineId: string;
  readonly atM: number;
  readonly xy: Xy;
  readonly along: Xy;
  readonly spot: Message;
}

/** Marks places along a fence where a switch could go, for the plan to choose from. */
export function createPlaceTool(context: ToolContext): Tool {
  let offer: PlaceOffer | null = null;
  const offerAt = ({ xy }: Pointer): PlaceOffer | null => {
    const line = nearestLine(context.scene(), xy, lineReachPx / context.view().pxPerM);
    if (!line?.shape.line.live) return null;
    const { shape, atM, point } = line;
    const spot = message('window.map.spots.onLine', { name: shape.line.name });
    return { lineId: shape.line.id, atM, xy: point, along: directionAt(shape, atM), spot };
  };
  return {
    name: 'place',
    hint() {
      const { place } = context.words().tools;
      return offer ? place.click : place.point;
    },
    fields: () => null,
    progress: () => ({ ...noProgress, snappedTo: offer?.spot ?? null }),
    move(pointer) {
      offer = offerAt(pointer);
      context.setCursor(offer ? 'pointer' : 'crosshair');
      context.invalidate();
    },
    click(pointer) {
      offer = offerAt(pointer);
      if (!offer) {
        context.refuse(context.words().tools.place.noLine);
        return;
      }
      const { lineId, atM } = offer;
      const name = context.input().project.fenceLine.get(lineId)?.name ?? '';
      const edit = addCandidatePlace({ lineId, atM, cost: null }, stableIds(context.events.newId));
      void context.commit({ label: context.words().tools.place.add({ name }), apply: edit });
    },
    out() {
      offer = null;
      context.invalidate();
    },
    key: () => false,
    cancel: () => false,
    paint({ ctx, view, palette }) {
      if (!offer) return;
      const [x, y] = toPx(view, offer.xy);
      const along: Xy = [offer.along[0], -offer.along[1]];
      paintItems(ctx, switchPlaceSign([x, y], along, markedPen(palette)).items);
      drawTag(ctx, palette, [x, y - 30], context.words().tools.place.couldGo({ spot: offer.spot }), 'center');
    },
  };
}
