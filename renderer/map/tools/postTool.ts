import { postSign } from '../../../core/drawing/signs/postSign.ts';
import { placePost } from '../../../core/model/edits/placePost.ts';
import { nextName } from '../../../core/model/names.ts';
import { paintItems } from '../canvas/paintItems.ts';
import { drawSnapCue } from '../interaction/cues.ts';
import { atSpot, type SnapTarget } from '../interaction/snapping.ts';
import { markedPen } from '../plane/screenPen.ts';
import { toPx } from '../plane/view.ts';
import { stableIds } from './stableIds.ts';
import { noProgress, type Pointer, type Tool, type ToolContext } from './tool.ts';

/** Marks posts that do not move, as a rule on a fence line. */
export function createPostTool(context: ToolContext): Tool {
  let last: Pointer | null = null;
  let snap: SnapTarget | null = null;

  return {
    name: 'post',
    hint: () => context.words().tools.post.click,
    fields: () => null,
    progress: () => ({ ...noProgress, snappedTo: atSpot(snap) }),
    move(pointer) {
      last = pointer;
      snap = context.snap(pointer);
      context.invalidate();
    },
    click(pointer) {
      snap = context.snap(pointer);
      if (snap?.kind === 'post') {
        context.refuse(context.words().tools.post.there({ spot: snap.spot }));
        return;
      }
      const at = snap?.lonLat ?? context.toLonLat(pointer.xy);
      const name = nextName(context.input().project, 'post');
      const newId = stableIds(context.events.newId);
      const edit = placePost({ at, role: snap ? 'strainer' : 'other', name }, newId);
      const label = context.words().tools.post.mark({ name });
      void context.commit({ label, apply: edit, choose: [newId('post')] });
    },
    out() {
      last = null;
      snap = null;
      context.invalidate();
    },
    key: () => false,
    cancel: () => false,
    paint(tools) {
      if (!last) return;
      const { ctx, view, palette } = tools;
      const role = snap ? 'strainer' : 'other';
      paintItems(ctx, postSign(toPx(view, snap?.xy ?? last.xy), role, markedPen(palette)).items);
      if (snap) drawSnapCue(tools, snap);
    },
  };
}
