import { type Box, boxAround } from '../geometry/box.ts';
import type { Xy } from '../geometry/types.ts';
import type { Project } from '../model/project.ts';
import type { Survey } from '../survey/types.ts';

/**
 * The part of the plane that the sheets must cover, metres: everything of the fence. Where nothing of it is drawn,
 * the posts and services; null where nothing is drawn at all. Services beyond it are shown as far as the sheets reach.
 */
export function propertyExtent(survey: Survey, project: Project): Box | null {
  return boxAround(fencePoints(survey, project)) ?? boxAround(otherPoints(survey, project));
}

function* fencePoints(survey: Survey, project: Project): Generator<Xy> {
  const { toXy } = survey.plane;
  for (const shape of survey.lines.values()) yield* shape.xy;
  for (const crossing of survey.crossings.values()) yield* crossing.path;
  for (const row of survey.switches) yield row.xy;
  for (const energiser of project.energiser.values()) yield toXy(energiser.at);
  for (const field of project.earthField.values()) yield toXy(field.at);
  for (const leadOut of project.leadOut.values()) yield* leadOut.path.map(toXy);
}

function* otherPoints(survey: Survey, project: Project): Generator<Xy> {
  const { toXy } = survey.plane;
  for (const post of project.post.values()) yield toXy(post.at);
  for (const service of project.service.values()) yield* service.path.map(toXy);
}
