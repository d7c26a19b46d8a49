import type { Xy } from '../../geometry/types.ts';
import type { InGround } from '../../model/inGroundThings.ts';
import type { Project } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import { type CrossingAsBuilt, crossingAsBuilt } from '../crossingAsBuilt.ts';
import { inGroundSource } from '../crossingSource.ts';

/** Something in the ground that the drawing shows no longer, and where it lies. */
export interface LeftInGround {
  readonly thing: InGround;
  /** Of several ways that it may lie, the one nearest to where it was drawn; a path of one vertex is a point. */
  readonly path: readonly Xy[];
  /** Every way that it may lie. */
  readonly ways: readonly (readonly Xy[])[];
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
      // Whatever its state was: that it lay in the ground is why it is kept.
      const crossing = { ...crossingAsBuilt(inGroundSource(project, survey, was)), inGround: true };
      const ways = [...crossing.courses.map(({ path }) => path), ...crossing.spots.map(({ xy }) => [xy])];
      return { thing, path: crossing.path, ways, crossing };
    }
    case 'leadOut':
      return drawnOnly(thing, was.leadOut.path.map(toXy));
    case 'earthField':
      return drawnOnly(thing, [toXy(was.earthField.at)]);
  }
}

function drawnOnly(thing: InGround, path: readonly Xy[]): LeftInGround {
  return { thing, path, ways: [path], crossing: null };
}
