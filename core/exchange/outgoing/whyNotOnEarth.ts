import type { Refusal } from '../../model/edits/support/edit.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import { message } from '../../words/message.ts';

/** `notPlaced`: a drawing on the blank grid has no longitudes and latitudes. `format`: what was to be made. */
export function whyNotOnEarth(project: Project, format: string): Refusal | null {
  const property = propertyOf(project);
  if (property.placed) return null;
  return { code: 'notPlaced', message: message('exchange.make.notPlaced', { name: property.name, format }) };
}
