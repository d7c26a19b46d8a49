import { cumulativeLengthsM } from '../geometry/plane/cumulativeLengths.ts';
import { nearestOnPolyline } from '../geometry/plane/nearestOnPolyline.ts';
import { pointAtStation } from '../geometry/plane/pointAtStation.ts';
import { subtract } from '../geometry/plane/vector.ts';
import { xyBearingDeg } from '../geometry/plane/xyBearing.ts';
import { xyDistanceM } from '../geometry/plane/xyDistance.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import type { TieFrom } from '../model/recordThings.ts';
import type { LineEnd } from '../model/things.ts';
import type { GatewayShape } from '../registers/types.ts';
import { bestTiePosts } from './bestTiePosts.ts';
import { type Certainty, certaintyOf, pointWithinM } from './certainty.ts';
import { compassWord } from './compass.ts';
import { type CrossingAsBuilt, depthAtM } from './crossingAsBuilt.ts';
import { type FixedPost, gatePostWord } from './tieFrom.ts';
import { offsetOf, type SolvedPoint } from './ties.ts';

/** A tape to hold to a post. */
export interface StakeTape {
  readonly postName: string;
  readonly post: Xy;
  readonly distanceM: number;
  /** Taped when the point was recorded; otherwise worked out from where the point and the post are. */
  readonly taped: boolean;
  /** The post is no longer drawn: it may be gone. */
  readonly gone: boolean;
}

/** A point of the trench, and how to find it again from its posts. */
export interface StakePoint {
  readonly key: string;
  readonly label: string;
  readonly xy: Xy;
  readonly at: LonLat;
  /** Along the trench from the start post's riser foot. */
  readonly alongTrenchM: number;
  readonly depthM: number;
  readonly by: 'ties' | 'offset' | 'gps' | 'drawn';
  /** It lies within this of where the tapes meet. */
  readonly withinM: number;
  readonly tapes: readonly StakeTape[];
  /** From the start post towards the end post, and square off that line. */
  readonly offset: { readonly alongM: number; readonly leftM: number };
  /** Of the two places where the tapes meet, the one on this side of the line of the posts; null: they meet once. */
  readonly side: string | null;
  /** The tapes meet at so flat an angle that a slip of 1 cm becomes more than 3 cm. */
  readonly weak: boolean;
}

/** A step along the straight line between the gate posts, and how far off it the trench lies there. */
export interface StakeStep {
  readonly alongM: number;
  readonly leftM: number;
  readonly depthM: number;
}

export interface StakeOut {
  readonly crossing: CrossingAsBuilt;
  readonly certainty: Certainty;
  /** "hinge post (west)" and so on. */
  readonly postNames: { readonly [E in LineEnd]: string };
  readonly points: readonly StakePoint[];
  readonly steps: readonly StakeStep[];
  /** Which way is left of the line from the start post to the end post: "north". */
  readonly leftIs: string;
  readonly rightIs: string;
  /** Marked posts near enough to be on the sketch. */
  readonly postsNear: readonly FixedPost[];
}

/** A tape of 30 m reaches all posts that are offered. */
const tapeM = 30;
/** Tapes that meet at under this angle make more than 3 cm of 1 cm. */
const flattestDeg = 25;

/** How to find a buried crossing again, by these posts (all that there are) that a tape can be held to. */
export function stakeOut(crossing: CrossingAsBuilt, fixed: readonly FixedPost[]): StakeOut {
  const { shape } = crossing;
  const posts = fixed.filter(({ xy }) => xyDistanceM(xy, shape.centre) <= tapeM + shape.gateway.widthM);
  const leftIs = compassWord(shape.bearingDeg - 90);
  return {
    crossing,
    certainty: certaintyOf(crossing),
    postNames: { start: ownPostName(shape, 'start'), end: ownPostName(shape, 'end') },
    points: pointsToFind(crossing, posts),
    steps: stepsAlong(crossing),
    leftIs,
    rightIs: compassWord(shape.bearingDeg + 90),
    postsNear: posts,
  };
}

/** A gate's own post with the side that it stands on, for nobody can see which is the start: "start post (west)". */
function ownPostName({ gateway, startPost, endPost }: GatewayShape, post: LineEnd): string {
  const bearingDeg = post === 'start' ? xyBearingDeg(endPost, startPost) : xyBearingDeg(startPost, endPost);
  return `${gatePostWord(gateway, post)} (${compassWord(bearingDeg)})`;
}

/** What the post of a tape is called by somebody who stands at the gateway. */
function nameHere(from: TieFrom, name: string, shape: GatewayShape): string {
  return from.on === 'gatePost' && from.gatewayId === shape.gateway.id ? ownPostName(shape, from.post) : name;
}

interface Wanted {
  readonly key: string;
  readonly label: string;
  readonly xy: Xy;
  readonly solved: SolvedPoint | null;
}

/** The measured points; and both feet and the furthest point of the bow, as drawn, where they were not measured. */
function pointsToFind(crossing: CrossingAsBuilt, posts: readonly FixedPost[]): StakePoint[] {
  const { points, path, startFoot, endFoot, lengthM } = crossing;
  const has = (...roles: string[]) => points.some(({ point, xy }) => xy && roles.includes(point.role));
  const wanted: Wanted[] = [
    ...(has('startFoot') ? [] : [{ key: 'start', label: 'riser foot, start post', xy: startFoot, solved: null }]),
    ...points.flatMap((solved): Wanted[] => {
      return solved.xy ? [{ key: solved.point.id, label: solved.label, xy: solved.xy, solved }] : [];
    }),
    ...(has('bend', 'point') || path.length < 2
      ? []
      : [{ key: 'middle', label: 'middle of the trench', xy: pointAtStation(path, lengthM / 2).point, solved: null }]),
    ...(has('endFoot') ? [] : [{ key: 'end', label: 'riser foot, end post', xy: endFoot, solved: null }]),
  ];
  return wanted.map((each) => stakePoint(each, crossing, posts)).sort((p, q) => p.alongTrenchM - q.alongTrenchM);
}

function stakePoint(
  { key, label, xy, solved }: Wanted,
  crossing: CrossingAsBuilt,
  posts: readonly FixedPost[],
): StakePoint {
  const alongTrenchM = nearestOnPolyline(xy, crossing.path)?.stationM ?? 0;
  const tapes = solved?.by === 'ties' ? tapesTaken(solved, crossing.shape) : tapesTo(xy, posts, crossing);
  return {
    key,
    label,
    xy,
    at: crossing.plane.toLonLat(xy),
    alongTrenchM,
    depthM: depthAtM(crossing, alongTrenchM),
    by: solved?.by ?? 'drawn',
    withinM: solved ? pointWithinM(solved.seM) : certaintyOf(crossing).withinM,
    tapes,
    offset: offsetOf(xy, crossing.shape),
    side: sideInWords(xy, tapes),
    weak: meetFlat(xy, tapes),
  };
}

function tapesTaken({ ties, point }: SolvedPoint, shape: GatewayShape): StakeTape[] {
  return ties.map(({ name, xy, gone, distanceM }, i) => {
    const postName = nameHere(point.ties[i]!.from, name, shape);
    return { postName, post: xy, distanceM, taped: true, gone };
  });
}

/** From the posts that fix the point best; a point at a post itself is found from that post. */
function tapesTo(xy: Xy, posts: readonly FixedPost[], { shape }: CrossingAsBuilt): StakeTape[] {
  const tape = ({ from, name, xy: post }: FixedPost): StakeTape => {
    return { postName: nameHere(from, name, shape), post, distanceM: xyDistanceM(post, xy), taped: false, gone: false };
  };
  const at = posts.find((post) => xyDistanceM(post.xy, xy) < 0.02);
  if (at) return [tape(at)];
  const [best] = bestTiePosts(
    posts.map(({ key, xy: post }) => ({ id: key, at: post })),
    xy,
    { count: 2, tapeLengthM: tapeM },
  );
  const chosen = best?.posts.map(({ id }) => id) ?? [];
  const own = posts.filter(({ from }) => from.on === 'gatePost' && from.gatewayId === shape.gateway.id);
  return (chosen.length > 0 ? posts.filter(({ key }) => chosen.includes(key)) : own).map(tape);
}

function sideInWords(xy: Xy, tapes: readonly StakeTape[]): string | null {
  const [a, b] = tapes;
  if (!a || !b) return null;
  const nearest = nearestOnPolyline(xy, stretched(a.post, b.post));
  return nearest && nearest.distanceM > 0.01 ? compassWord(xyBearingDeg(nearest.point, xy)) : null;
}

/** The line of two posts, well beyond both. */
function stretched(a: Xy, b: Xy): readonly [Xy, Xy] {
  const [dx, dy] = subtract(b, a);
  return [
    [a[0] - 100 * dx, a[1] - 100 * dy],
    [b[0] + 100 * dx, b[1] + 100 * dy],
  ];
}

function meetFlat(xy: Xy, tapes: readonly StakeTape[]): boolean {
  if (tapes.length < 2) return false;
  const bearings = tapes.map(({ post }) => xyBearingDeg(post, xy));
  const best = Math.max(
    ...bearings.flatMap((p, i) => bearings.slice(i + 1).map((q) => Math.abs(Math.sin(((p - q) * Math.PI) / 180)))),
  );
  return best < Math.sin((flattestDeg * Math.PI) / 180);
}

/** Steps of a half, one or two metres, whichever makes up to about a dozen. */
function stepsAlong(crossing: CrossingAsBuilt): StakeStep[] {
  const { path, shape } = crossing;
  if (path.length < 2) return [];
  const offsets = path.map((xy) => offsetOf(xy, shape));
  const stations = cumulativeLengthsM(path);
  const widthM = xyDistanceM(shape.startPost, shape.endPost);
  const stepM = [0.5, 1, 2, 5].find((step) => widthM / step <= 12) ?? 10;
  const marks = new Set<number>();
  for (let alongM = stepM; alongM < widthM - 0.1; alongM += stepM) marks.add(alongM);
  return [...marks].flatMap((alongM): StakeStep[] => {
    const i = offsets.findIndex((offset, k) => {
      const next = offsets[k + 1];
      return next && (offset.alongM - alongM) * (next.alongM - alongM) <= 0 && offset.alongM !== next.alongM;
    });
    if (i < 0) return [];
    const [p, q] = [offsets[i]!, offsets[i + 1]!];
    const share = (alongM - p.alongM) / (q.alongM - p.alongM);
    const stationM = stations[i]! + share * (stations[i + 1]! - stations[i]!);
    return [{ alongM, leftM: p.leftM + share * (q.leftM - p.leftM), depthM: depthAtM(crossing, stationM) }];
  });
}
