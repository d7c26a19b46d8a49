import { postSign } from '../../../core/drawing/signs/postSign.ts';
import { placePost } from '../../../core/model/edits/placePost.ts';
import { nextName } from '../../../core/model/names.ts';
import { paintItems } from '../canvas/paintItems.ts';
import { drawSnapCue } from '../interaction/cues.ts';
import type { SnapTarget } from '../interaction/snapping.ts';
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
    hint: () => 'Click where the post stands. On a fence it marks a strainer.',
    fields: () => null,
    progress: () => ({ ...noProgress, snappedTo: snap?.text ?? null }),
    move(pointer) {
      last = pointer;
      snap = context.snap(pointer);
      context.invalidate();
    },
    click(pointer) {
      snap = context.snap(pointer);
      if (snap?.kind === 'post') {
        context.refuse(`There is ${snap.text} already.`);
        return;
      }
      const at = snap?.lonLat ?? context.toLonLat(pointer.xy);
      const name = nextName(context.input().project, 'post');
      const newId = stableIds(context.events.newId);
      const edit = placePost({ at, role: snap ? 'strainer' : 'other', name }, newId);
      void context.commit({ label: `Mark post ${name}`, apply: edit, choose: [newId('post')] });
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
