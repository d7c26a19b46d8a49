import { moveSwitch } from '../../../../core/model/edits/moveSwitch.ts';
import type { SwitchRow } from '../../../../core/survey/types.ts';
import { atOffer, type SwitchOffer, switchOffer } from '../switchOffer.ts';
import { drawSwitchOffer } from '../switchTool.ts';
import { noProgress, type ToolContext } from '../tool.ts';
import type { Drag } from './drag.ts';

/** Moves a cut-out switch to another place; it is pinned there. */
export function dragSwitch(context: ToolContext, { switch: cutOut }: SwitchRow): Drag {
  let offer: SwitchOffer | null = null;
  return {
    hint: context.words().choose.dropSwitch({ name: cutOut.name }),
    move({ xy, alt }) {
      offer = switchOffer(context.scene(), context.input(), xy, context.view().pxPerM, !alt);
    },
    progress: () => ({ ...noProgress, snappedTo: atOffer(offer) }),
    async drop() {
      if (!offer) return false;
      const apply = moveSwitch({ switchId: cutOut.id, place: offer.place });
      return context.commit({ label: context.words().choose.moveSwitch({ name: cutOut.name }), apply });
    },
    paint: (tools) => offer && drawSwitchOffer(tools, offer),
  };
}
