import type { LonLat } from '../../../core/geometry/types.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { nextName } from '../../../core/model/names.ts';
import { serviceFacts } from '../../../core/model/serviceKinds.ts';
import { plainWords } from '../../../core/words/figures.ts';
import { createPathDraft } from './pathDraft.ts';
import { stableIds } from './stableIds.ts';
import type { Tool, ToolContext } from './tool.ts';

/** Draws what else is there, point by point: lines, areas, and single places, as the inspector says which. */
export function createServiceTool(context: ToolContext): Tool {
  const draft = createPathDraft(context);
  let finishing = false;

  const wanted = () => context.input().service ?? { what: 'powerLine' as const, voltageV: null };
  const facts = () => serviceFacts[wanted().what];

  async function finish(): Promise<void> {
    const { what, voltageV } = wanted();
    const { shape, buried } = facts();
    const kindName = plainWords().kinds.service.what.choices[what];
    const path = draft.points().map(({ lonLat }) => lonLat);
    const least = { point: 1, line: 2, area: 3 }[shape];
    if (finishing) return;
    if (path.length < least) {
      context.refuse(context.words().tools.service.tooFew({ what, least }));
      return;
    }
    const name = nextName(context.input().project, 'service', `${kindName} `);
    const newId = stableIds(context.events.newId);
    const apply = addThing(
      {
        kind: 'service',
        name,
        what,
        path: shape === 'area' ? closed(path) : path,
        voltageV: what === 'powerLine' ? voltageV : null,
        buried,
        open: null,
        note: '',
      },
      newId,
    );
    finishing = true;
    const label = context.words().tools.service.draw({ name });
    const made = context.commit({ label, apply, choose: [newId('service')] });
    // Only what is in the file is taken off the map; what is refused stays to be repaired.
    if (await made.finally(() => (finishing = false))) draft.clear();
  }

  return {
    name: 'service',
    hint() {
      const count = draft.points().length;
      const { shape } = facts();
      const { service, nextOrEnd } = context.words().tools;
      const { what } = wanted();
      if (shape === 'point') return service.stands({ what });
      if (count === 0) return service.begins({ what });
      return shape === 'area' ? service.alongEdge : nextOrEnd;
    },
    fields: () => (draft.points().length > 0 ? 'lengthAndBearing' : null),
    progress: draft.progress,
    move: draft.move,
    click(pointer) {
      const added = draft.add(pointer);
      const points = draft.points();
      const isClosed = added && points.length > 3 && points.at(-1)!.lonLat === points[0]!.lonLat;
      if (facts().shape === 'point' || isClosed || (!added && pointer.byKeyboard)) void finish();
    },
    doubleClick() {
      if (draft.points().length > 0) void finish();
    },
    out: draft.out,
    key(event) {
      if (event.key === 'Backspace') return draft.back();
      if (event.key !== 'Enter' || draft.points().length === 0) return false;
      void finish();
      return true;
    },
    typed: (length, bearing) => {
      if (length.trim() !== '' || bearing.trim() !== '') return draft.addTyped(length, bearing);
      void finish();
      return true;
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

/** An area's path ends where it began. */
function closed(path: readonly LonLat[]): readonly LonLat[] {
  const [first, last] = [path[0]!, path.at(-1)!];
  return first[0] === last[0] && first[1] === last[1] ? path : [...path, first];
}
