import { viewBox } from '../plane/view.ts';
import type { Part } from '../scene/parts.ts';
import type { Look } from './look.ts';
import { paintCasings } from './paintCasings.ts';
import { paintCrossings, paintLeadOuts } from './paintCrossings.ts';
import { paintGrid } from './paintGrid.ts';
import { paintInGround } from './paintInGround.ts';
import { paintLabels } from './paintLabels.ts';
import { paintLines } from './paintLines.ts';
import { notRecorded, paintRecord } from './paintRecord.ts';
import { paintServices } from './paintServices.ts';
import { paintFindings, paintPlan, paintSigns } from './paintSigns.ts';

/** Signs and labels reach this far beyond the thing they belong to. */
const reachPx = 40;

/** The settled drawing, from the grid up to the labels. Yields now and then, so that whoever runs it can share time with the pointer. */
export function* paintStatic(look: Look): Generator<void> {
  paintGrid(look);
  const parts = look.scene.search(viewBox(look.view, reachPx));
  const byKind = Map.groupBy(parts, ({ kind }) => kind);
  const of = <K extends Part['kind']>(kind: K) =>
    (byKind.get(kind) ?? []) as unknown as readonly Extract<Part, { readonly kind: K }>[];
  yield;
  yield* paintCasings(
    look,
    [...of('service'), ...of('piece'), ...of('leadOut')].map(({ xy }) => xy),
  );
  paintServices(look, of('service'));
  yield* paintLines(look, of('piece'));
  paintLeadOuts(look, of('leadOut'));
  paintInGround(look, of('inGround'));
  yield* paintCrossings(look, notRecorded(look, of('crossing')));
  paintRecord(look);
  yield* paintSigns(look, of('gateway'));
  yield* paintSigns(look, of('post'));
  yield* paintSigns(look, [...of('switch'), ...of('earthField'), ...of('energiser')]);
  paintPlan(look);
  paintFindings(look);
  yield;
  yield* paintLabels(look, parts);
}
