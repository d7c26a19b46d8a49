import type { Xy } from '../../geometry/types.ts';
import type { InGround } from '../../model/inGroundThings.ts';
import type { Project } from '../../model/project.ts';
import type { Survey } from '../../registers/types.ts';
import { type CrossingAsBuilt, crossingAsBuilt } from '../crossingAsBuilt.ts';
import { inGroundSource } from '../crossingSource.ts';

/** Something in the ground that the drawing shows no longer, and where it lies. */
export interface LeftInGround {
  readonly thing: InGround;
  /** A path of one vertex is a point. */
  readonly path: readonly Xy[];
  /** Of a crossing: all that can be told of it; null for lead-outs and earth stakes. */
  readonly crossing: CrossingAsBuilt | null;
}

interface Kept {
  readonly things: Project['inGround'];
  readonly posts: Project['post'];
  readonly left: readonly LeftInGround[];
}

const kept = new WeakMap<Survey, Kept>();

/** Everything that was left in the ground, also what has been taken out since (see its fate). */
export function leftInGround(project: Project, survey: Survey): readonly LeftInGround[] {
  const { inGround: things, post: posts } = project;
  let known = kept.get(survey);
  if (known?.things !== things || known.posts !== posts) {
    known = { things, posts, left: [...things.values()].map((thing) => solved(thing, project, survey)) };
    kept.set(survey, known);
  }
  return known.left;
}

function solved(thing: InGround, project: Project, survey: Survey): LeftInGround {
  const { was } = thing;
  const { toXy } = survey.plane;
  switch (was.what) {
    case 'crossing': {
      const crossing = crossingAsBuilt(inGroundSource(project, survey, was));
      return { thing, path: crossing.path, crossing };
    }
    case 'leadOut':
      return { thing, path: was.leadOut.path.map(toXy), crossing: null };
    case 'earthField':
      return { thing, path: [toXy(was.earthField.at)], crossing: null };
  }
}
