import highsLoader from 'highs';
import { packRolls } from '../../core/quantities/cutting/packRolls.ts';
import { orderOf } from '../../core/quantities/order/order.ts';
import { priceListOf } from '../../core/quantities/order/priceList.ts';
import { orderSettingsOf, takeOff } from '../../core/quantities/takeOff.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { largeProperty } from '../support/largeProperty.ts';
import { randomNumbers } from '../support/random.ts';
import { measure } from './measure.ts';
import type { BenchRow } from './row.ts';

export async function bench(): Promise<BenchRow[]> {
  const highs = await highsLoader();
  return [
    cuts('pipes of 4 to 14 m from rolls of 50, 100 and 200 m', pieces(10, 4, 14), [50, 100, 200], highs),
    cuts('pipes of 4 to 14 m from rolls of 50, 100 and 200 m', pieces(60, 4, 14), [50, 100, 200]),
    cuts('pipes of 4 to 14 m from rolls of 50, 100 and 200 m', pieces(600, 4, 14), [50, 100, 200]),
    cuts('long pieces of 15 to 45 m from rolls of 100 m', pieces(60, 15, 45), [100]),
    wholeOrder(2000),
  ];
}

type Highs = Awaited<ReturnType<typeof highsLoader>>;

function cuts(name: string, wanted: readonly number[], rolls: readonly number[], highs?: Highs): BenchRow {
  const sizes = rolls.map((lengthM) => ({ length: lengthM * 100, count: Infinity, bought: true }));
  const packing = packRolls(wanted, sizes);
  const proof = packing.optimal
    ? 'proven best'
    : `at most ${packing.rolls.length - packing.least!.rolls} rolls too many`;
  return {
    name: `${wanted.length} ${name}, ${proof}`,
    size: wanted.length,
    ...measure(() => packRolls(wanted, sizes), 10),
    unit: 'ms',
    budget: null,
    ...(highs ? { other: { name: 'HiGHS', median: measure(() => highs.solve(model(wanted, rolls)), 3).median } } : {}),
  };
}

function wholeOrder(runs: number): BenchRow {
  const project = largeProperty(runs);
  const survey = surveyOf(project);
  const settings = orderSettingsOf(project);
  return {
    name: 'take-off and order of a whole property',
    size: runs,
    ...measure(
      () => orderOf({ project, takeOff: takeOff({ project, survey }), prices: priceListOf(project), settings }),
      8,
    ),
    unit: 'ms',
    budget: null,
  };
}

/** Whole centimetres. */
function pieces(count: number, fromM: number, toM: number): number[] {
  const random = randomNumbers(count);
  return Array.from({ length: count }, () => Math.round((fromM + random() * (toM - fromM)) * 100));
}

/** Fewest rolls, then least length, as a mixed-integer program in the format of CPLEX. */
function model(wanted: readonly number[], rollsM: readonly number[]): string {
  const enough = Math.ceil((2 * wanted.reduce((sum, piece) => sum + piece, 0)) / (100 * Math.max(...rollsM)));
  const rolls = rollsM.flatMap((lengthM) => Array<number>(enough).fill(lengthM * 100));
  const once = wanted.map((_, piece) => ` ${rolls.map((_, roll) => `x${piece}_${roll}`).join(' + ')} = 1`);
  const room = rolls.map(
    (length, roll) =>
      ` ${wanted.map((need, piece) => `${need} x${piece}_${roll}`).join(' + ')} - ${length} y${roll} <= 0`,
  );
  const binaries = rolls.flatMap((_, roll) => [`y${roll}`, ...wanted.map((_, piece) => `x${piece}_${roll}`)]);
  const aim = rolls.map((length, roll) => `${1_000_000 + length} y${roll}`).join(' + ');
  return ['Minimize', ` ${aim}`, 'Subject To', ...once, ...room, 'Binary', ` ${binaries.join(' ')}`, 'End'].join('\n');
}
