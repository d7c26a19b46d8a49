import { createLocalPlane } from '../../geometry/localPlane.ts';
import { createSpatialIndex, type SpatialIndex } from '../../geometry/spatialIndex.ts';
import type { LonLat, Xy } from '../../geometry/types.ts';
import { propertyOf } from '../../model/project.ts';
import type { FenceLine, Thing } from '../../model/things.ts';
import { message } from '../../words/message.ts';
import type { Intake } from './intake.ts';

/**
 * New fences with their ends moved onto a post, a vertex or a fence within reach, in that order of liking; a fence whose
 * two ends are within reach of each other is closed. What stood there before stays as it is.
 */
export function snapEnds(intake: Intake, things: readonly Thing[], withinM: number): Thing[] {
  const plane = createLocalPlane(propertyOf(intake.project).origin);
  const fences = things.filter((thing): thing is FenceLine => thing.kind === 'fenceLine');
  const lines = createSpatialIndex<string>();
  for (const { id, path } of [...intake.project.fenceLine.values(), ...fences]) lines.set(id, path.map(plane.toXy));
  const newPosts = things.flatMap((thing) => (thing.kind === 'post' ? [thing] : []));
  const posts = createSpatialIndex(
    [...intake.project.post.values(), ...newPosts].map(({ id, at }) => [id, [plane.toXy(at)]] as const),
  );
  const target = (xy: Xy, id: string) => placeFor(xy, id, lines, posts, withinM);

  let moved = 0;
  const snapped = new Map<string, FenceLine>();
  for (const line of fences) {
    const xy = line.path.map(plane.toXy);
    const path: LonLat[] = [...line.path];
    if (comesHome(xy, withinM)) path[path.length - 1] = path[0]!;
    else {
      for (const end of [0, path.length - 1]) {
        const place = target(xy[end]!, line.id);
        if (place) path[end] = plane.toLonLat(place);
      }
    }
    if (path.every((vertex, i) => vertex === line.path[i])) continue;
    moved++;
    snapped.set(line.id, { ...line, path });
    lines.set(line.id, path.map(plane.toXy));
  }
  if (moved > 0) intake.notes.push(message('exchange.intake.endsMoved', { fences: moved }));
  return things.map((thing) => (thing.kind === 'fenceLine' ? (snapped.get(thing.id) ?? thing) : thing));
}

/** Whether a way ends where it began, give or take, and is more than a few steps to and fro. */
function comesHome(xy: readonly Xy[], withinM: number): boolean {
  const [first, last] = [xy[0]!, xy.at(-1)!];
  const apartM = Math.hypot(last[0] - first[0], last[1] - first[1]);
  if (xy.length < 4 || apartM > withinM) return false;
  return xy.some(([x, y]) => Math.hypot(x - first[0], y - first[1]) > 4 * withinM);
}

function placeFor(
  xy: Xy,
  ownId: string,
  lines: SpatialIndex<string>,
  posts: SpatialIndex<string>,
  withinM: number,
): Xy | null {
  const post = posts.nearest(xy, withinM);
  if (post) return post.point;
  const near = lines.near(xy, withinM).filter(({ key }) => key !== ownId);
  const vertex = near.find(({ fraction }) => fraction === 0 || fraction === 1);
  return (vertex ?? near[0])?.point ?? null;
}
