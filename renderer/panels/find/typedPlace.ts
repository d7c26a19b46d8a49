import { readGridPlace, readPlace } from '../../../core/coordinates/readPlace.ts';
import { systemOf } from '../../../core/coordinates/systems.ts';
import type { LonLat } from '../../../core/geometry/types.ts';
import { type Project, propertyOf } from '../../../core/model/project.ts';
import type { Survey } from '../../../core/survey/types.ts';
import { figuresOf } from '../../state/useFigures.ts';

export type TypedPlace = { readonly lonLat: LonLat } | { readonly problem: string };

/** A place that was typed or pasted, in the property's coordinates: degrees, a map grid, or metres on the blank grid. */
export function typedPlace(text: string, project: Project, survey: Survey): TypedPlace {
  const { placed, origin, units } = propertyOf(project);
  const f = figuresOf(project);
  if (!placed) {
    const read = readGridPlace(text, units);
    return 'problem' in read ? { problem: f.say(read.problem) } : { lonLat: survey.plane.toLonLat(read.xy) };
  }
  // A place copied from a link that phones open: RFC 5870.
  const link = /^\s*geo:([^;?]*)/i.exec(text);
  const bare = link ? link[1]! : text;
  const system = systemOf(project.coordinateSettings.get('coordinates'));
  const read = readPlace(bare, system, origin);
  if (read.lonLat) return { lonLat: read.lonLat };
  return { problem: f.say(read.problem) };
}
