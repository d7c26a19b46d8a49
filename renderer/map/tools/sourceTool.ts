import { drawLeadOut } from '../../../core/model/edits/drawLeadOut.ts';
import { placeEnergiser } from '../../../core/model/edits/placeEnergiser.ts';
import { nextName } from '../../../core/model/names.ts';
import { createPathDraft } from './pathDraft.ts';
import { stableIds } from './stableIds.ts';
import type { Pointer, Tool, ToolContext } from './tool.ts';

/** Places an energiser, then draws its lead-out to the fence. Begun at an energiser that is there, it draws a lead-out only. */
export function createSourceTool(context: ToolContext): Tool {
  const draft = createPathDraft(context);
  let energiserId: string | null = null;
  let finishing = false;

  async function place(pointer: Pointer): Promise<void> {
    const snap = context.snap(pointer);
    const { project } = context.input();
    const there = snap?.kind === 'energiser' && [...project.energiser.values()].find(({ at }) => at === snap.lonLat);
    if (there) {
      energiserId = there.id;
      draft.begin(there.at);
      return;
    }
    const at = snap?.lonLat ?? context.toLonLat(pointer.xy);
    const name = nextName(project, 'energiser');
    const newId = stableIds(context.events.newId);
    const id = newId('energiser');
    const edit = placeEnergiser({ at, name }, newId);
    const label = context.words().tools.source.place({ name });
    const done = await context.commit({ label, apply: edit, choose: [id] });
    // Placed on a fence it feeds that fence without a lead-out.
    if (!done || snap?.lineId) return;
    energiserId = id;
    draft.begin(at);
  }

  async function finish(): Promise<void> {
    if (finishing) return;
    const path = draft.points().map(({ lonLat }) => lonLat);
    if (!energiserId || path.length < 2) {
      context.refuse(context.words().tools.source.noLine);
      return;
    }
    const name = nextName(context.input().project, 'leadOut');
    const newId = stableIds(context.events.newId);
    const edit = drawLeadOut({ energiserId, path, name }, newId);
    finishing = true;
    const label = context.words().tools.source.draw({ name });
    const made = context.commit({ label, apply: edit, choose: [newId('leadOut')] });
    if (await made.finally(() => (finishing = false))) {
      energiserId = null;
      draft.clear();
      context.setTool('choose');
    }
  }

  return {
    name: 'source',
    hint() {
      const { source } = context.words().tools;
      return energiserId ? source.leadOut : source.click;
    },
    fields: () => (energiserId ? 'lengthAndBearing' : null),
    progress: draft.progress,
    move: draft.move,
    click(pointer) {
      if (!energiserId) {
        void place(pointer);
        return;
      }
      const added = draft.add(pointer);
      if (added && draft.points().at(-1)?.snap?.lineId) void finish();
    },
    doubleClick: () => {
      if (energiserId && draft.points().length > 1) void finish();
    },
    out: draft.out,
    key(event) {
      if (event.key === 'Backspace' && draft.points().length > 1) return draft.back();
      if (event.key !== 'Enter' || !energiserId) return false;
      void finish();
      return true;
    },
    typed: (length, bearing) => draft.addTyped(length, bearing),
    takeBack: () => draft.points().length > 1 && draft.back(),
    lastPoint: () => draft.points().at(-1)?.xy ?? null,
    cancel() {
      const had = energiserId !== null;
      energiserId = null;
      draft.clear();
      return had;
    },
    paint: draft.paint,
  };
}
