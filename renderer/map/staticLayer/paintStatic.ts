import type { Item } from '../../../core/drawing/displayList.ts';
import { paintItems } from '../canvas/paintItems.ts';
import type { Ctx } from '../canvas/shapes.ts';
import { viewBox } from '../plane/view.ts';
import type { Part } from '../scene/parts.ts';
import { drawCasings } from './drawCasings.ts';
import { drawCrossings, drawLeadOuts } from './drawCrossings.ts';
import { drawGrid } from './drawGrid.ts';
import { drawInGround } from './drawInGround.ts';
import { drawLabels } from './drawLabels.ts';
import { drawLines } from './drawLines.ts';
import { drawRecord, notRecorded } from './drawRecord.ts';
import { drawServices } from './drawServices.ts';
import { drawFindings, drawPlan, drawSigns } from './drawSigns.ts';
import type { Look } from './look.ts';

/** Signs and labels reach this far beyond the thing they belong to. */
const reachPx = 40;

/** Paints the settled drawing. Yields now and then, so that whoever runs it can share time with the pointer. */
export function* paintStatic(ctx: Ctx, look: Look): Generator<void> {
  for (const items of drawStatic(look)) {
    paintItems(ctx, items);
    yield;
  }
}

/** The settled drawing as a display list, from the grid up to the labels, in portions. */
export function* drawStatic(look: Look): Generator<readonly Item[]> {
  yield drawGrid(look);
  const parts = look.scene.search(viewBox(look.view, reachPx));
  const byKind = Map.groupBy(parts, ({ kind }) => kind);
  const of = <K extends Part['kind']>(kind: K) =>
    (byKind.get(kind) ?? []) as unknown as readonly Extract<Part, { readonly kind: K }>[];
  yield [];
  yield* drawCasings(
    look,
    [...of('service'), ...of('piece'), ...of('leadOut')].map(({ xy }) => xy),
  );
  yield drawServices(look, of('service'));
  yield* drawLines(look, of('piece'));
  yield [...drawLeadOuts(look, of('leadOut')), ...drawInGround(look, of('inGround'))];
  yield* drawCrossings(look, notRecorded(look, of('crossing')));
  yield drawRecord(look);
  yield* drawSigns(look, of('gateway'));
  yield* drawSigns(look, of('post'));
  yield* drawSigns(look, [...of('switch'), ...of('earthField'), ...of('energiser')]);
  yield [...drawPlan(look), ...drawFindings(look)];
  yield* drawLabels(look, parts);
}
