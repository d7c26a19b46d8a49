import type { DrawnDig } from '../findTypes.ts';
import type { ToolName } from '../mapTypes.ts';
import { createPathDraft } from './pathDraft.ts';
import type { Tool, ToolContext } from './tool.ts';

const names: Readonly<Record<DrawnDig['shape'], ToolName>> = { point: 'digPoint', line: 'digLine', area: 'digArea' };
const least: Readonly<Record<DrawnDig['shape'], number>> = { point: 1, line: 2, area: 3 };

/** Marks where somebody will dig: a hole, a trench or an area. Nothing of it goes into the drawing. */
export function createDigTool(context: ToolContext, shape: DrawnDig['shape']): Tool {
  const draft = createPathDraft(context);

  function finish(): void {
    const points = draft.points();
    const first = points[0];
    const last = points.at(-1);
    const closes = shape === 'area' && points.length > 3 && first!.lonLat === last!.lonLat;
    const path = (closes ? points.slice(0, -1) : points).map(({ lonLat }) => lonLat);
    if (path.length < least[shape]) {
      const { dig } = context.words().tools;
      context.refuse(shape === 'area' ? dig.areaTooFew : dig.trenchTooFew);
      return;
    }
    context.events.onDig?.({ shape, path });
    draft.clear();
  }

  return {
    name: names[shape],
    hint() {
      const count = draft.points().length;
      const { dig, nextPoint, nextOrEnd } = context.words().tools;
      if (shape === 'point') return dig.hole;
      if (count === 0) return shape === 'line' ? dig.trenchBegins : dig.firstCorner;
      return count < least[shape] ? nextPoint : nextOrEnd;
    },
    fields: () => (shape !== 'point' && draft.points().length > 0 ? 'lengthAndBearing' : null),
    progress: draft.progress,
    move: draft.move,
    click(pointer) {
      const added = draft.add(pointer);
      if (shape === 'point') finish();
      else if (!added && pointer.byKeyboard) finish();
      else if (shape === 'area') {
        const points = draft.points();
        if (added && points.length > 3 && points.at(-1)!.lonLat === points[0]!.lonLat) finish();
      }
    },
    doubleClick() {
      if (shape !== 'point') finish();
    },
    out: draft.out,
    key(event) {
      if (event.key === 'Backspace') return draft.back();
      if (event.key !== 'Enter' || draft.points().length === 0) return false;
      finish();
      return true;
    },
    typed(length, bearing) {
      if (length.trim() === '' && bearing.trim() === '') {
        finish();
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
