import type { Refusal } from '../../model/edits/support/edit.ts';
import { type Project, propertyOf } from '../../model/project.ts';

/** `notPlaced`: a drawing on the blank grid has no longitudes and latitudes. `format`: what was to be made. */
export function whyNotOnEarth(project: Project, format: string): Refusal | null {
  const property = propertyOf(project);
  if (property.placed) return null;
  const message = `${property.name} is drawn on the blank grid and has no place on earth; ${format} holds longitudes and latitudes only. Put the property on the earth first.`;
  return { code: 'notPlaced', message };
}
