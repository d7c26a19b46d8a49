import { allFindings } from '../../../core/checks/allFindings.ts';
import type { Finding } from '../../../core/checks/finding.ts';
import type { Project } from '../../../core/model/project.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import type { Message } from '../../../core/words/message.ts';
import { inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';
import { expectFromCatalogue, namesIn } from '../../support/pseudo.ts';

export function findingsOf(project: Project): Finding[] {
  return allFindings(project, surveyOf(project));
}

/** A finding as it is read in English. */
export type SaidFinding = Omit<Finding, 'message' | 'remedy' | 'source'> &
  Record<'message' | 'remedy' | 'source', string>;

/** Rules that name posts and points as `core/locate` still puts them in words. */
const inWordsOfLocate: ReadonlySet<string> = new Set(['tiePostMoved']);

/** What one rule says. Nothing of it may be English that does not come from the catalogue. */
export function said(project: Project, rule: string): SaidFinding[] {
  const names = namesIn(project);
  return findingsOf(project)
    .filter((finding) => finding.rule === rule)
    .map((finding) => {
      if (!inWordsOfLocate.has(rule)) for (const part of messagesOf(finding)) expectFromCatalogue(part, names);
      const { message, remedy, source } = finding;
      return { ...finding, message: inEnglish(message), remedy: inEnglish(remedy), source: inEnglish(source) };
    });
}

function messagesOf({ message, remedy, source, fixes }: Finding): Message[] {
  return [message, remedy, ...(source ? [source] : []), ...fixes.map(({ label }) => label)];
}

/** The project after the first fix of the only finding of a rule. */
export function repaired(project: Project, rule: string): Project {
  const [only, ...others] = findingsOf(project).filter((finding) => finding.rule === rule);
  const [fix] = only?.fixes ?? [];
  if (!fix || others.length > 0) throw new Error(`One finding of ${rule} with a fix was expected.`);
  return fix.edit(project, countingIds(900));
}
