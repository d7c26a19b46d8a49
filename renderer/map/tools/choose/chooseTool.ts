import type { Xy } from '../../../../core/geometry/types.ts';
import { deleteVertex } from '../../../../core/model/edits/deleteVertex.ts';
import { insertVertex } from '../../../../core/model/edits/insertVertex.ts';
import { drawHandle } from '../../interaction/cues.ts';
import { findingMapId, type MapId, nudgeM } from '../../mapTypes.ts';
import { toPx } from '../../plane/view.ts';
import { noProgress, type PaintTools, type Pointer, type Tool, type ToolContext } from '../tool.ts';
import { idsInBox } from './boxChoice.ts';
import type { Drag } from './drag.ts';
import { type Handle, handleAt, handlesOf } from './handles.ts';
import { findingAt, idsAt } from './idsAt.ts';
import { isArrow, nudge } from './nudge.ts';
import { voltageAt } from './voltageAt.ts';

/** Clicks at one place further apart in time than a double click ask for what lies beneath. */
const doubleClickMs = 450;
const samePlacePx = 5;
const nudgeFarM = 1;

/** Chooses things; drags, nudges and deletes their corners. */
export function createChooseTool(context: ToolContext): Tool {
  let hovered: MapId | null = null;
  let held: Handle | null = null;
  let drag: Drag | null = null;
  let box: { readonly from: Xy; to: Xy } | null = null;
  /** What the fence under the pointer reads, where voltages are shown. */
  let volts: string | null = null;
  let lastClick: { readonly xy: Xy; readonly time: number } | null = null;
  /** The corner that the keyboard works on. */
  let corner: { readonly lineId: string; readonly index: number } | null = null;

  const chosenLine = () => {
    const { chosen } = context.input();
    return chosen.length === 1 ? context.scene().survey.lines.get(chosen[0]!) : undefined;
  };
  const liveCorner = () => {
    const shape = chosenLine();
    if (!corner || shape?.line.id !== corner.lineId || corner.index >= shape.xy.length) corner = null;
    return corner;
  };

  function point(id: MapId | null): void {
    if (id === hovered) return;
    hovered = id;
    context.events.onPoint(id);
    context.invalidate();
  }

  function stepCorner(backwards: boolean): boolean {
    const shape = chosenLine();
    if (!shape || context.input().workspace !== 'draw') return false;
    const count = shape.xy.length - (shape.closed ? 1 : 0);
    const now = liveCorner()?.index ?? (backwards ? count : -1);
    const next = now + (backwards ? -1 : 1);
    // Past the last corner the key goes on to the next thing in the window, so that nobody is caught here.
    corner = next < 0 || next >= count ? null : { lineId: shape.line.id, index: next };
    context.invalidate();
    return corner !== null;
  }

  function editCorner(key: string): boolean {
    const at = liveCorner();
    const shape = chosenLine();
    if (!at || !shape) return false;
    const { lineId, index } = at;
    const { name } = shape.line;
    if (key === 'Insert') {
      const segment = Math.min(index, shape.xy.length - 2);
      const [a, b] = [shape.xy[segment]!, shape.xy[segment + 1]!];
      const middle = context.toLonLat([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
      const apply = insertVertex({ lineId, segment, at: middle });
      void context.commit({ label: context.words().choose.putCorner({ name }), apply });
      corner = { lineId, index: segment + 1 };
    } else {
      const apply = deleteVertex({ lineId, index });
      void context.commit({ label: context.words().choose.deleteCorner({ name }), apply });
    }
    return true;
  }

  function nudgeChosen(event: KeyboardEvent): boolean {
    const { chosen, workspace } = context.input();
    const [id] = chosen;
    if (!id || chosen.length !== 1 || (workspace !== 'draw' && workspace !== 'divide')) return false;
    const vertex = liveCorner()?.index ?? null;
    const edit = nudge(context, { id, vertex }, event.key, event.shiftKey ? nudgeFarM : nudgeM);
    if (!edit) return false;
    void context.commit(edit);
    return true;
  }

  return {
    name: 'choose',
    hint() {
      if (drag) return drag.hint;
      const words = context.words().choose;
      if (liveCorner()) return words.hintCorner({ farM: nudgeFarM });
      if (volts !== null) return volts;
      const { chosen, workspace } = context.input();
      if (chosen.length === 1 && chosenLine() && workspace === 'draw') {
        return words.hintLine;
      }
      return chosen.length > 0 ? words.hintSelected : words.hint;
    },
    fields: () => null,
    progress: () => drag?.progress() ?? noProgress,
    move(pointer) {
      held = handleAt(handlesOf(context), pointer.xy, context.view());
      const ids = idsAt(context.scene(), context.input(), pointer.xy, context.view().pxPerM);
      point(ids[0] ?? null);
      volts = voltageAt(context.scene(), context.input(), pointer.xy, context.view().pxPerM);
      context.setCursor(held ? (held.kind === 'body' ? 'move' : 'grab') : ids.length > 0 ? 'pointer' : '');
      context.invalidate();
    },
    click(pointer) {
      const { xy, shift } = pointer;
      const input = context.input();
      const { pxPerM } = context.view();
      const finding = findingAt(context.scene(), input, xy, pxPerM);
      const ids = idsAt(context.scene(), input, xy, pxPerM);
      const handle = handleAt(handlesOf(context), xy, context.view());
      const line = chosenLine();
      if (handle?.kind === 'corner' && handle.vertex !== null && line) {
        corner = { lineId: line.line.id, index: handle.vertex };
        context.invalidate();
        return;
      }
      corner = null;
      const again = isAgain(pointer, pxPerM);
      lastClick = { xy, time: performance.now() };
      const chosen = input.chosen.length === 1 ? ids.indexOf(input.chosen[0]!) : -1;
      const id = again && chosen >= 0 ? ids[(chosen + 1) % ids.length] : ids[0];
      if (finding && id === findingMapId(finding) && context.events.onFinding) context.events.onFinding(finding);
      else context.events.onChoose(id ? [id] : [], shift && id !== undefined);
    },
    press(pointer) {
      const handle = handleAt(handlesOf(context), pointer.xy, context.view());
      if (handle) {
        drag = handle.begin();
        corner = null;
      } else if (pointer.shift) box = { from: pointer.xy, to: pointer.xy };
      return handle !== null || box !== null;
    },
    drag(pointer) {
      if (box) box.to = pointer.xy;
      drag?.move(pointer);
      context.setCursor(drag ? 'grabbing' : 'crosshair');
      context.invalidate();
    },
    release(pointer, moved) {
      const done = drag;
      if (box && moved) {
        const ids = idsInBox(context.scene(), box.from, pointer.xy);
        if (ids.length > 0) context.events.onChoose(ids, true);
      }
      box = null;
      if (!done || !moved) {
        drag = null;
        context.invalidate();
        return;
      }
      // The dragged shape stays until the new drawing is there, so that nothing jumps back and forth.
      void done.drop().finally(() => {
        if (drag === done) drag = null;
        context.invalidate();
      });
    },
    out() {
      volts = null;
      point(null);
    },
    key(event) {
      if (event.key === 'Tab') return stepCorner(event.shiftKey);
      if (['Delete', 'Backspace', 'Insert'].includes(event.key)) return editCorner(event.key);
      return isArrow(event.key) && !event.ctrlKey && nudgeChosen(event);
    },
    cancel() {
      if (drag || box) {
        drag = null;
        box = null;
      } else if (corner) corner = null;
      else if (context.input().chosen.length > 0) context.events.onChoose([], false);
      else return false;
      context.invalidate();
      return true;
    },
    paint(tools) {
      if (drag) drag.paint(tools);
      else paintHandles(tools);
      if (box) paintBox(tools, box.from, box.to);
    },
  };

  function isAgain({ xy }: Pointer, pxPerM: number): boolean {
    if (!lastClick || performance.now() - lastClick.time < doubleClickMs) return false;
    return Math.hypot(xy[0] - lastClick.xy[0], xy[1] - lastClick.xy[1]) * pxPerM < samePlacePx;
  }

  function paintHandles(tools: PaintTools): void {
    const active = liveCorner();
    for (const { kind, xy, vertex } of handlesOf(context)) {
      if (kind === 'body') continue;
      const isActive = (active !== null && vertex === active.index) || (held !== null && held.xy === xy);
      drawHandle(tools, toPx(tools.view, xy), kind, isActive);
    }
  }
}

function paintBox({ ctx, view, palette }: PaintTools, from: Xy, to: Xy): void {
  const [ax, ay] = toPx(view, from);
  const [bx, by] = toPx(view, to);
  ctx.setLineDash([6, 4]);
  ctx.strokeStyle = palette.accent;
  ctx.lineWidth = 2;
  ctx.strokeRect(ax, ay, bx - ax, by - ay);
  ctx.setLineDash([]);
}
