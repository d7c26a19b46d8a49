import { nameOfMeasure } from '../../../core/quantities/measures.ts';
import type { Figures } from '../../../core/words/types.ts';
import type { WorkedOrder } from '../../work/order.ts';

/** The quantities that something may serve: those of this order, and `present`, whatever it is. */
export function measureChoices(
  { takeOff }: WorkedOrder,
  present: string | null,
  f: Figures,
): { readonly value: string; readonly label: string }[] {
  const choices = takeOff.quantities
    .filter(({ group }) => group !== 'work')
    .map(({ key, name }) => ({ value: key, label: f.say(name) }));
  if (present === null || choices.some(({ value }) => value === present)) return choices;
  return [{ value: present, label: f.say(nameOfMeasure(present)) }, ...choices];
}
