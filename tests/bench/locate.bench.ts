import { crossingAt } from '../../core/locate/crossingAsBuilt.ts';
import { crossingRows } from '../../core/locate/crossingSearch.ts';
import { digCheck } from '../../core/locate/digCheck.ts';
import { faultSearchGround } from '../../core/locate/faultSearch/faultSearchGround.ts';
import { walkFaultSearch } from '../../core/locate/faultSearch/faultSearchWalk.ts';
import { stakeOut } from '../../core/locate/stakeOut.ts';
import { fixedPosts } from '../../core/locate/tieFrom.ts';
import type { FaultSearch } from '../../core/model/faultSearchThings.ts';
import { put } from '../../core/model/project.ts';
import { newBuriedPoint } from '../../core/model/recordDefaults.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { largeProperty } from '../support/largeProperty.ts';
import { measure } from './measure.ts';
import type { BenchRow } from './row.ts';

/** What Find asks on a large property: the register, one crossing, a dig, the next test of a search. */
export async function bench(): Promise<BenchRow[]> {
  const drawn = largeProperty(6000);
  const points = [...drawn.crossing.values()].flatMap(({ id }) =>
    (['startFoot', 'bend', 'endFoot'] as const).map((role, i) => ({
      ...newBuriedPoint(`${id}-${role}`, id, role),
      offset: { alongM: 2 * i, leftM: i === 1 ? 1 : 0 },
    })),
  );
  const project = put(drawn, ...points);
  const survey = surveyOf(project);
  const size = survey.crossings.size;
  const gatewayId = survey.crossings.keys().next().value!;
  const at = survey.plane.toLonLat(survey.gateways.get(gatewayId)!.centre);
  const search: FaultSearch = {
    kind: 'faultHunt',
    id: 'h',
    name: 'Search',
    startedAt: '2026-05-01T08:00',
    by: '',
    energiserId: 'E',
    saves: 'tests',
    lowBelowV: 3000,
    goodFromV: 4000,
    openedFirst: [],
    readings: [],
    end: null,
    note: '',
  };
  const row = (name: string, work: () => unknown, budget: number | null, rounds = 20): BenchRow => {
    return { name, size, ...measure(work, rounds), unit: 'ms', budget };
  };
  return [
    row('register of crossings, each measured at three points', () => crossingRows(project, survey), 500),
    row(
      'how to find one crossing',
      () => stakeOut(crossingAt(project, survey, gatewayId)!, fixedPosts(project, survey)),
      50,
    ),
    row(
      'what lies within 10 m of a dig',
      () => digCheck(project, survey, { shape: 'point', path: [at], errorM: 1, withinM: 10 }),
      50,
    ),
    row('search for a fault planned anew', () => walkFaultSearch(search, faultSearchGround(survey, 'E')!), null, 3),
  ];
}
