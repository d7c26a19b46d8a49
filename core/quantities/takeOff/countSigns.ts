import { signPlaces } from '../../checks/installation/warningSigns.ts';
import { CheckContext } from '../../checks/support/context.ts';
import { message } from '../../words/message.ts';
import { measureOf } from '../measures.ts';
import { counts, type TakeOffInput } from './input.ts';
import type { Tally } from './tally.ts';

/** Warning signs on live fence along public roads and paths, where the checks want them. */
export function countSigns(input: TakeOffInput, tally: Tally): void {
  const { project, survey, settings } = input;
  const places = signPlaces(new CheckContext(project, survey), settings.signEveryM);
  const counted = places.filter(({ line }) => counts(input, line.status));
  for (const group of Map.groupBy(counted, ({ line, service }) => `${line.id} ${service.id}`).values()) {
    const { line, service } = group[0]!;
    tally.add(
      measureOf('sign'),
      [line.id],
      group.length,
      message('order.pieces.sign', { line: line.name, along: service.name }),
    );
  }
}
