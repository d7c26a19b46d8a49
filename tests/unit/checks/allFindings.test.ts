import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import { EditRefused } from '../../../core/model/edits/support/edit.ts';
import { projectOf } from '../../../core/model/project.ts';
import { inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';
import { expectFromCatalogue, namesIn } from '../../support/pseudo.ts';
import { randomProject } from '../../support/randomProjects.ts';
import { findingsOf } from './findings.ts';

describe('allFindings', () => {
  it('gives every finding an id of its own, whole sentences, and the worst first', () => {
    const rank = ['error', 'warning', 'notKnown', 'hint'];
    fc.assert(
      fc.property(randomProject, (project) => {
        const findings = findingsOf(project);
        expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length);
        const ranks = findings.map(({ severity }) => rank.indexOf(severity));
        expect(ranks).toEqual(ranks.toSorted());
        const names = namesIn(project);
        for (const { message, remedy, source, workspaces, thingIds } of findings) {
          expect(inEnglish(message)).toMatch(/^["A-Z0-9].*\.$/s);
          expect(inEnglish(message)).not.toMatch(/undefined|NaN|null/);
          expect(inEnglish(remedy)).toMatch(/^[A-Z].*\.$/s);
          for (const said of [message, remedy, ...(source ? [source] : [])]) expectFromCatalogue(said, names);
          expect(workspaces.length).toBeGreaterThan(0);
          expect(thingIds.length).toBeGreaterThan(0);
        }
      }),
      { seed: 31, numRuns: 150 },
    );
  });

  it('offers fixes that take away what they were offered for, or refuse with a reason', () => {
    let fixed = 0;
    fc.assert(
      fc.property(randomProject, (project) => {
        for (const { id, rule, fixes } of findingsOf(project)) {
          for (const { edit } of fixes) {
            try {
              const after = findingsOf(edit(project, countingIds(900)));
              const left = after.filter((finding) => finding.rule === rule).length;
              const before = findingsOf(project).filter((finding) => finding.rule === rule).length;
              expect(left, id).toBeLessThan(before);
              fixed++;
            } catch (error) {
              if (!(error instanceof EditRefused)) throw error;
            }
          }
        }
      }),
      { seed: 32, numRuns: 60, endOnFailure: true },
    );
    expect(fixed).toBeGreaterThan(50);
  });

  it('has no error to tell of the demo property, and something to show of each other kind but hints', () => {
    const severities = new Set(findingsOf(projectOf(demoThings())).map(({ severity }) => severity));
    expect(severities).toEqual(new Set(['warning', 'notKnown']));
  });
});
