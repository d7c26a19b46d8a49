import { addFenceLine } from '../../../core/model/edits/addFenceLine.ts';
import { nextName } from '../../../core/model/names.ts';
import { createPathDraft } from './pathDraft.ts';
import { stableIds } from './stableIds.ts';
import type { Tool, ToolContext } from './tool.ts';

/** Draws a fence line, point by point, by clicks or typed figures. */
export function createFenceTool(context: ToolContext): Tool {
  const draft = createPathDraft(context);
  let finishing = false;

  async function finish(): Promise<void> {
    const points = draft.points();
    if (finishing) return;
    if (points.length < 2) {
      context.refuse(context.words().tools.fence.tooFew);
      return;
    }
    const { project, nextFenceTypeId } = context.input();
    const typeId = nextFenceTypeId ?? project.fenceType.keys().next().value;
    if (!typeId) {
      context.refuse(context.words().tools.fence.noType);
      return;
    }
    const path = points.map(({ lonLat }) => lonLat);
    const name = nextName(project, 'fenceLine');
    const newId = stableIds(context.events.newId);
    const edit = addFenceLine({ path, typeId, name }, newId);
    finishing = true;
    const label = context.words().tools.fence.draw({ name });
    const made = context.commit({ label, apply: edit, choose: [newId('fenceLine')] });
    // Only what is in the file is taken off the map; a refused line stays to be repaired.
    if (await made.finally(() => (finishing = false))) draft.clear();
  }

  return {
    name: 'fence',
    hint() {
      const count = draft.points().length;
      const { fence, nextPoint } = context.words().tools;
      if (count === 0) return fence.begins;
      return count === 1 ? nextPoint : fence.nextOrEnd;
    },
    fields: () => (draft.points().length > 0 ? 'lengthAndBearing' : null),
    progress: draft.progress,
    move: draft.move,
    click(pointer) {
      const added = draft.add(pointer);
      const points = draft.points();
      const closes = added && points.length > 3 && points.at(-1)!.lonLat === points[0]!.lonLat;
      if (closes || (!added && pointer.byKeyboard)) void finish();
    },
    doubleClick: () => void finish(),
    out: draft.out,
    key(event) {
      if (event.key === 'Backspace') return draft.back();
      if (event.key !== 'Enter' || draft.points().length === 0) return false;
      void finish();
      return true;
    },
    typed: (length, bearing) => {
      if (length.trim() === '' && bearing.trim() === '') {
        void finish();
        return true;
      }
      return draft.addTyped(length, bearing);
    },
    takeBack: () => draft.back(),
    lastPoint: () => draft.points().at(-1)?.xy ?? null,
    cancel() {
      const had = draft.points().length > 0;
      draft.clear();
      return had;
    },
    paint: draft.paint,
  };
}
