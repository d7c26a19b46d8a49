import { putAll } from '../project.ts';
import type { Growth } from '../things.ts';
import { whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusalOf, guarded, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';

/** The growth on several fence lines, by line id; null takes the property's. */
export type SetGrowth = ReadonlyMap<string, Growth | null>;

/** Changes the growth on several fence lines at once, such as to what readings have told. */
export function setGrowth(wanted: SetGrowth): Edit {
  return guarded(whyNotSetGrowth(wanted), (project) =>
    putAll(
      project,
      [...wanted].map(([id, growth]) => ({ ...found(project, 'fenceLine', id), growth })),
    ),
  );
}

/** `notFound`, `notValid` (a leakage of 0 or less). */
export function whyNotSetGrowth(wanted: SetGrowth): WhyNot {
  return (project) =>
    firstRefusalOf(
      [...wanted].flatMap(([id, growth]) => [
        () => whyNotFound(project, 'fenceLine', id),
        () => whyNotFields(project, 'fenceLine', id, { growth }),
      ]),
    );
}
