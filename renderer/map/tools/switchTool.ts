import { switchSign } from '../../../core/drawing/signs/switchSign.ts';
import { placeSwitch } from '../../../core/model/edits/placeSwitch.ts';
import { nextName } from '../../../core/model/names.ts';
import { paintItems } from '../canvas/paintItems.ts';
import { drawTag } from '../interaction/cues.ts';
import { markedPen } from '../plane/screenPen.ts';
import { toPx } from '../plane/view.ts';
import { stableIds } from './stableIds.ts';
import { atOffer, type SwitchOffer, switchOffer } from './switchOffer.ts';
import { noProgress, type PaintTools, type Pointer, type Tool, type ToolContext } from './tool.ts';

/** Places cut-out switches: at gate posts, line ends, lead-outs, the plan's places, or anywhere along a fence. */
export function createSwitchTool(context: ToolContext): Tool {
  let offer: SwitchOffer | null = null;
  const offerAt = ({ xy, alt }: Pointer) =>
    switchOffer(context.scene(), context.input(), xy, context.view().pxPerM, !alt);

  return {
    name: 'switch',
    hint() {
      const words = context.words().tools.switch;
      return offer ? words.click : words.point;
    },
    fields: () => null,
    progress: () => ({ ...noProgress, snappedTo: atOffer(offer) }),
    move(pointer) {
      offer = offerAt(pointer);
      context.setCursor(offer ? 'pointer' : 'crosshair');
      context.invalidate();
    },
    click(pointer) {
      offer = offerAt(pointer);
      if (!offer) {
        context.refuse(context.words().tools.switch.noLine);
        return;
      }
      const name = nextName(context.input().project, 'switch');
      const newId = stableIds(context.events.newId);
      const edit = placeSwitch({ place: offer.place, name }, newId);
      const label = context.words().tools.switch.place({ name });
      void context.commit({ label, apply: edit, choose: [newId('switch')] });
    },
    out() {
      offer = null;
      context.invalidate();
    },
    key: () => false,
    cancel: () => false,
    paint: (tools) => offer && drawSwitchOffer(tools, offer),
  };
}

/** A switch as it would stand, with the name of its place. */
export function drawSwitchOffer({ ctx, view, palette, say }: PaintTools, offer: SwitchOffer): void {
  const [x, y] = toPx(view, offer.xy);
  const along = [offer.along[0], -offer.along[1]] as const;
  paintItems(ctx, switchSign([x, y], along, { normally: 'closed', status: 'built' }, markedPen(palette)).items);
  drawTag(ctx, palette, [x, y - 30], say(offer.spot), 'center');
}
