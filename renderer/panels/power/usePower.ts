import type { Project } from '../../../core/model/project.ts';
import { estimateOf } from '../../../core/survey/power/estimateOf.ts';
import { type LineVoltages, lineVoltages } from '../../../core/survey/power/lineVoltages.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import type { Estimate, Power } from '../../../core/survey/power/types.ts';
import type { Survey } from '../../../core/survey/types.ts';
import type { Stood } from '../../../core/words/en/power/estimate.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';

/** The voltage as it is shown now. */
export interface PowerView {
  readonly power: Power;
  readonly estimate: Estimate;
  readonly lines: readonly LineVoltages[];
  /** How the switches stand where that is not as usual; else null. */
  readonly stood: Stood | null;
}

let last: { readonly survey: Survey; readonly shownOpen: readonly string[] | null; readonly view: PowerView } | null =
  null;

/** Estimates for the open property with the switches as the page shows them; worked out once for page and map. */
export function usePower(): PowerView {
  const { project, survey } = useOpenFile();
  const shownOpen = useApp((state) => state.shownOpen);
  return powerView(project, survey, shownOpen);
}

export function powerView(project: Project, survey: Survey, shownOpen: readonly string[] | null): PowerView {
  if (last?.survey === survey && last.shownOpen === shownOpen) return last.view;
  const power = powerOf(project, survey);
  const open = new Set((shownOpen ?? [...power.normallyOpen]).filter((id) => project.switch.has(id)));
  const estimate = estimateOf(power, open);
  const view = { power, estimate, lines: lineVoltages(power, estimate), stood: stoodOtherwise(power, open) };
  last = { survey, shownOpen, view };
  return view;
}

function stoodOtherwise({ project, normallyOpen }: Power, open: ReadonlySet<string>): Stood | null {
  const name = (id: string) => project.switch.get(id)?.name ?? id;
  const off = [...open].filter((id) => !normallyOpen.has(id)).map(name);
  const on = [...normallyOpen].filter((id) => !open.has(id)).map(name);
  if (off.length === 0 && on.length === 0) return null;
  return { off, on, allOn: open.size === 0 && on.length > 1 };
}
