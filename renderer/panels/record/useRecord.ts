import { useMemo } from 'react';
import type { Project } from '../../../core/model/project.ts';
import { type CrossingRow, crossingRegister } from '../../../core/record/crossingRegister.ts';
import { type BuiltDifference, differencesFromPlan } from '../../../core/record/differences.ts';
import type { Survey } from '../../../core/survey/types.ts';
import { useOpenFile } from '../../state/appState.ts';

/** What the Record page and its map show. */
export interface RecordView {
  readonly crossings: readonly CrossingRow[];
  readonly differences: readonly BuiltDifference[];
}

let kept: { readonly project: Project; readonly survey: Survey; readonly view: RecordView } | null = null;

/** Worked out once for each state of the property, for the page and the map alike. */
export function recordView(project: Project, survey: Survey): RecordView {
  if (kept?.project !== project || kept.survey !== survey) {
    const view = { crossings: crossingRegister(project, survey), differences: differencesFromPlan(project, survey) };
    kept = { project, survey, view };
  }
  return kept.view;
}

export function useRecord(): RecordView {
  const { project, survey } = useOpenFile();
  return useMemo(() => recordView(project, survey), [project, survey]);
}
