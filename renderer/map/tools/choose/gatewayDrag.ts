import { moveGateway } from '../../../../core/model/edits/moveGateway.ts';
import type { GatewayShape, LineShape } from '../../../../core/shapes/types.ts';
import { formatTape } from '../../../../core/words/numbers/write.ts';
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
    hint: `Slide ${gateway.name} along its fence; hold Alt to let it stand anywhere.`,
    move(pointer) {
      const place = placeOnLine(shape, pointer.xy);
      const reachM = pointer.alt ? 0 : snapReachPx / context.view().pxPerM;
      at = place ? snapGateway(place.atM, stations, reachM, widthM, shape.lengthM) : null;
    },
    progress: () => ({ ...noProgress, snappedTo: at?.text ?? null }),
    async drop() {
      if (!at) return false;
      const apply = moveGateway({ gatewayId: gateway.id, atM: at.atM });
      return context.commit({ label: `Move gateway ${gateway.name}`, apply });
    },
    paint(tools) {
      if (!at) return;
      const [x, y] = toPx(tools.view, drawOpening(tools, shape, at.atM, widthM, gateway));
      const { units } = context.input();
      const text = at.text ?? `${formatTape(at.atM, units)} from the start of ${shape.line.name}`;
      drawTag(tools.ctx, tools.palette, [x, y - 34], text, 'center');
    },
  };
}
