import { allFindings } from '../../core/checks/allFindings.ts';
import { type Project, propertyOf, put } from '../../core/model/project.ts';
import type { LonLat, Service } from '../../core/model/things.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { largeProperty } from '../support/largeProperty.ts';
import { measure } from './measure.ts';
import type { BenchRow } from './row.ts';

export async function bench(): Promise<BenchRow[]> {
  return [2000, 20_000].flatMap(checkRows);
}

/** All rules over a property with a power line, a public road and a water main right across it. */
function checkRows(runs: number): BenchRow[] {
  const project = withServices(largeProperty(runs));
  const size = surveyOf(project).network.edges.filter(({ kind }) => kind === 'run').length;
  const rounds = runs > 5000 ? 6 : 30;
  const label = `${size.toLocaleString('en')} runs`;
  const row = (name: string, projects: readonly Project[], budget: number | null): BenchRow => {
    const surveyed = projects.map((one) => ({ one, survey: surveyOf(one) }));
    let round = 0;
    const work = () => {
      const { one, survey } = surveyed[round++ % surveyed.length]!;
      return allFindings(one, survey);
    };
    // `measure` warms up with three rounds before it counts.
    return { name: `${name}, ${label}`, size, ...measure(work, rounds - 3), unit: 'ms', budget };
  };
  const fresh = Array.from({ length: rounds }, () => copied(project));
  const edited = Array.from({ length: rounds }, (_, i) => moved(project, i));
  return [
    row('all checks of a property just opened', fresh, null),
    row('all checks after moving a vertex', edited, runs > 5000 ? null : 30),
  ];
}

/** The same drawing in new objects, so that nothing kept with the old ones helps. */
function copied(project: Project): Project {
  return put(project, ...[...project.fenceLine.values()].map((line) => ({ ...line, path: [...line.path] })));
}

function moved(project: Project, round: number): Project {
  const line = project.fenceLine.get('short-1-1')!;
  const [lon, lat] = line.path[2]!;
  return put(project, { ...line, path: line.path.with(2, [lon + 1e-6 * (round + 1), lat]) });
}

function withServices(project: Project): Project {
  const [west, south] = propertyOf(project).origin;
  const across = (id: string, dLon: number, dLat: number, changes: Partial<Service>): Service => {
    const path: LonLat[] = [
      [west - dLon, south - dLat],
      [west + dLon, south + dLat],
    ];
    const plain = { name: id, voltageV: null, buried: false, open: null, note: '' };
    return { kind: 'service', id, what: 'road', path, ...plain, ...changes };
  };
  return put(
    project,
    across('power line', 0.2, 0.05, { what: 'powerLine', voltageV: 11_000 }),
    across('public road', 0.05, 0.2, { open: 'public' }),
    across('water main', 0.2, 0.1, { what: 'waterPipe', buried: true }),
  );
}
