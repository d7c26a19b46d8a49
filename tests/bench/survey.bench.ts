import { put } from '../../core/model/project.ts';
import { buildNetwork } from '../../core/network/buildNetwork.ts';
import { switchCandidates } from '../../core/survey/candidates.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { testSheets } from '../../core/survey/testSheets.ts';
import { largeProperty } from '../support/largeProperty.ts';
import { measure } from './measure.ts';
import type { BenchRow } from './row.ts';

export async function bench(): Promise<BenchRow[]> {
  return [2000, 20_000].flatMap(surveyRows);
}

/** What each edit costs before anything can be drawn: the network, and the whole survey. */
function surveyRows(runs: number): BenchRow[] {
  const rounds = runs > 5000 ? 12 : 60;
  const project = largeProperty(runs);
  const survey = surveyOf(project);
  const size = survey.network.edges.filter(({ kind }) => kind === 'run').length;
  const label = `${size.toLocaleString('en')} runs`;
  const row = (name: string, work: () => unknown, budget: number | null): BenchRow => ({
    name: `${name}, ${label}`,
    size,
    ...measure(work, rounds),
    unit: 'ms',
    budget: runs > 5000 ? null : budget,
  });
  const gateway = project.gateway.get('gate-short-1-1')!;
  const line = project.fenceLine.get('short-1-1')!;
  let round = 0;
  return [
    row('network made anew', () => buildNetwork(project), 25),
    row(
      'survey after moving a gateway',
      () => surveyOf(put(project, { ...gateway, atM: 20 + (round++ % 50) }), { project, survey }),
      50,
    ),
    row(
      'survey after moving a vertex',
      () => {
        const [lon, lat] = line.path[2]!;
        const path = line.path.with(2, [lon + 1e-6 * (round++ % 50), lat]);
        return surveyOf(put(project, { ...line, path }), { project, survey });
      },
      80,
    ),
    row('places where a switch could go', () => switchCandidates(project, survey), null),
    row('test sheets of all sections', () => testSheets(project, survey), null),
  ];
}
