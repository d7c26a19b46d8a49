import { placeGateway } from '../../../core/model/edits/placeGateway.ts';
import { nextName } from '../../../core/model/names.ts';
import type { Gateway } from '../../../core/model/things.ts';
import { drawTag } from '../interaction/cues.ts';
import { type GatewayStation, gatewayStations, snapGateway } from '../interaction/gatewaySnap.ts';
import { typedLengthM } from '../interaction/typedMeasures.ts';
import { toPx } from '../plane/view.ts';
import { landmarksOf } from './landmarks.ts';
import { nearestLine, type PlaceOnLine } from './nearestLine.ts';
import { drawOpening } from './openingPreview.ts';
import { lineReachPx, snapReachPx } from './reach.ts';
import { stableIds } from './stableIds.ts';
import { noProgress, type Pointer, type Tool, type ToolContext } from './tool.ts';

/** Width of the next gateway until another is typed: an ordinary single gate; common practice, no source. */
const startingWidthM = 4.2;
const widestM = 100;

interface Offer extends GatewayStation {
  readonly place: PlaceOnLine;
  readonly opens: Gateway['opens'];
}

/** Places gateways on fence lines; shows the opening, the swing and what it snaps to before the click. */
export function createGatewayTool(context: ToolContext): Tool {
  let widthM = startingWidthM;
  let offer: Offer | null = null;

  function offerAt(pointer: Pointer): Offer | null {
    const scene = context.scene();
    const { pxPerM } = context.view();
    const place = nearestLine(scene, pointer.xy, lineReachPx / pxPerM);
    if (!place) return null;
    const openings = [...scene.survey.gateways.values()].filter(
      ({ gateway }) => gateway.lineId === place.shape.line.id,
    );
    const { lengthM } = place.shape;
    const stations = pointer.alt ? [] : gatewayStations(landmarksOf(scene, place.shape), openings, widthM, lengthM);
    const station = snapGateway(place.atM, stations, snapReachPx / pxPerM, widthM, lengthM);
    // It swings to the side that the pointer is on.
    return { ...station, place, opens: place.side ?? 'left' };
  }

  function put(): void {
    if (!offer) {
      context.refuse(context.words().tools.gateway.noLine);
      return;
    }
    const name = nextName(context.input().project, 'gateway');
    const newId = stableIds(context.events.newId);
    const { atM, hungFrom, opens, place } = offer;
    const lineId = place.shape.line.id;
    const edit = placeGateway({ lineId, atM, widthM, hungFrom, opens, name }, newId);
    const label = context.words().tools.gateway.place({ name });
    void context.commit({ label, apply: edit, choose: [newId('gateway')] });
  }

  return {
    name: 'gateway',
    hint() {
      const { gateway } = context.words().tools;
      return offer ? gateway.click({ widthM }) : gateway.point;
    },
    fields: () => 'width',
    progress: () => ({ ...noProgress, snappedTo: offer?.spot ?? null }),
    move(pointer) {
      offer = offerAt(pointer);
      context.setCursor(offer ? 'pointer' : 'crosshair');
      context.invalidate();
    },
    click(pointer) {
      offer = offerAt(pointer);
      put();
    },
    out() {
      offer = null;
      context.invalidate();
    },
    key: () => false,
    typed(text) {
      const typed = typedLengthM(text, context.input().units);
      if (typeof typed === 'object' && typed !== null) {
        context.refuse(typed.problem);
        return false;
      }
      if (typed !== null && typed > widestM) {
        context.refuse(context.words().tools.gateway.tooWide({ mostM: widestM }));
        return false;
      }
      widthM = typed ?? widthM;
      context.invalidate();
      return true;
    },
    cancel: () => false,
    paint(tools) {
      if (!offer) return;
      const gateway = { leaves: 1 as const, hungFrom: offer.hungFrom, opens: offer.opens };
      const centre = drawOpening(tools, offer.place.shape, offer.atM, widthM, gateway);
      const [x, y] = toPx(tools.view, centre);
      const text = context.words().tools.gateway.tag({ widthM, spot: offer.spot });
      drawTag(tools.ctx, tools.palette, [x, y - 34], text, 'center');
    },
  };
}
