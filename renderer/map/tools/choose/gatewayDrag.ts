import { moveGateway } from '../../../../core/model/edits/moveGateway.ts';
import type { GatewayShape, LineShape } from '../../../../core/shapes/types.ts';
import { drawTag } from '../../interaction/cues.ts';
import { type GatewayStation, gatewayStations, snapGateway } from '../../interaction/gatewaySnap.ts';
import { toPx } from '../../plane/view.ts';
import { landmarksOf } from '../landmarks.ts';
import { placeOnLine } from '../nearestLine.ts';
import { drawOpening } from '../openingPreview.ts';
import { snapReachPx } from '../reach.ts';
import { noProgress, type ToolContext } from '../tool.ts';
import type { Drag } from './drag.ts';

/** Slides a gateway along its line. */
export function dragGateway(context: ToolContext, { gateway }: GatewayShape, shape: LineShape): Drag {
  const scene = context.scene();
  const { widthM } = gateway;
  const others = [...scene.survey.gateways.values()].filter(
    (other) => other.gateway.lineId === gateway.lineId && other.gateway.id !== gateway.id,
  );
  const stations = gatewayStations(landmarksOf(scene, shape), others, widthM, shape.lengthM);
  let at: GatewayStation | null = null;
  return {
    hint: context.words().choose.slideGateway({ name: gateway.name }),
    move(pointer) {
      const place = placeOnLine(shape, pointer.xy);
      const reachM = pointer.alt ? 0 : snapReachPx / context.view().pxPerM;
      at = place ? snapGateway(place.atM, stations, reachM, widthM, shape.lengthM) : null;
    },
    progress: () => ({ ...noProgress, snappedTo: at?.spot ?? null }),
    async drop() {
      if (!at) return false;
      const apply = moveGateway({ gatewayId: gateway.id, atM: at.atM });
      return context.commit({ label: context.words().choose.moveGateway({ name: gateway.name }), apply });
    },
    paint(tools) {
      if (!at) return;
      const [x, y] = toPx(tools.view, drawOpening(tools, shape, at.atM, widthM, gateway));
      const fromStart = { lengthM: at.atM, name: shape.line.name };
      const text = at.spot ? tools.say(at.spot) : context.words().spots.fromStart(fromStart);
      drawTag(tools.ctx, tools.palette, [x, y - 34], text, 'center');
    },
  };
}
