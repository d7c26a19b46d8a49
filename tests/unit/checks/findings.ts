import { allFindings } from '../../../core/checks/allFindings.ts';
import type { Finding } from '../../../core/checks/finding.ts';
import type { Project } from '../../../core/model/project.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { countingIds } from '../../support/ids.ts';

export function findingsOf(project: Project): Finding[] {
  return allFindings(project, surveyOf(project));
}

/** What one rule says. */
export function said(project: Project, rule: string): Finding[] {
  return findingsOf(project).filter((finding) => finding.rule === rule);
}

/** The project after the first fix of the only finding of a rule. */
export function repaired(project: Project, rule: string): Project {
  const [only, ...others] = said(project, rule);
  const [fix] = only?.fixes ?? [];
  if (!fix || others.length > 0) throw new Error(`One finding of ${rule} with a fix was expected.`);
  return fix.edit(project, countingIds(900));
}
