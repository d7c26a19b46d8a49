import { cumulativeLengthsM, nearestOnPolyline, pointAtStation } from '../geometry/polyline.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import { xyBearingDeg, xyDistanceM } from '../geometry/vector.ts';
import { largestOf } from '../model/extremes.ts';
import type { TieFrom } from '../model/recordThings.ts';
import type { LineEnd } from '../model/things.ts';
import type { GatewayShape } from '../shapes/types.ts';
import { type Message, message } from '../words/message.ts';
import { bestTiePosts } from './bestTiePosts.ts';
import { type CompassWord, postSide, sideOfOpening } from './compass.ts';
import type { CrossingAsBuilt } from './crossingAsBuilt.ts';
import { type CrossingDepth, type DepthThere, depthAt, depthOf } from './depth.ts';
import { type FixedPost, gatePostWord } from './tieFrom.ts';
import { footLabel, offsetOf, type SolvedPoint, sideOfLine } from './ties.ts';

/** A tape to hold to a post. */
export interface StakeTape {
  readonly postName: Message;
  readonly post: Xy;
  readonly distanceM: number;
  /** Taped when the point was recorded; otherwise worked out from where the point and the post are. */
  readonly taped: boolean;
  /** The post is no longer drawn: it may be gone. */
  readonly gone: boolean;
  /** How far it is drawn from where it stood when the tape was held to it; 0: there. Metres. */
  readonly movedM: number;
}

/** A place where a point of the trench can be. */
export interface StakePlace {
  readonly xy: Xy;
  readonly at: LonLat;
  /** If this is the place, it lies within this of where the tapes meet. */
  readonly withinM: number;
  /** Of the two places where the tapes meet, the one on this side of the line of the posts; null: they meet once. */
  readonly side: CompassWord | null;
  /** From the start post towards the end post, and square off that line. */
  readonly offset: { readonly alongM: number; readonly leftM: number };
}

/** A point of the trench, and how to find it again from its posts. */
export interface StakePoint {
  readonly key: string;
  readonly label: Message;
  /** How it was measured; drawn: it was not. planned: nothing lies there yet. */
  readonly by: 'ties' | 'offset' | 'gps' | 'drawn' | 'planned';
  /** Every place where it can be, none counting less than another; none where its tapes do not meet. */
  readonly places: readonly StakePlace[];
  /** What was measured of it; null where it is only drawn. */
  readonly solved: SolvedPoint | null;
  readonly tapes: readonly StakeTape[];
  /** Where a post of `tapes` is gone or was moved: tapes to posts that are drawn now. Else, and of several places, none. */
  readonly tapesNow: readonly StakeTape[];
  /** Along the trench from the start post's riser foot. */
  readonly alongTrenchM: number;
  readonly depth: DepthThere;
  /** The tapes meet at so flat an angle that a slip of 1 cm becomes more than 3 cm. */
  readonly weak: boolean;
}

/** A step along the straight line between the gate posts, and how far off it the trench lies there. */
export interface StakeStep {
  readonly alongM: number;
  /** On each course that the trench may take there, from the right to the left. */
  readonly leftMs: readonly number[];
  readonly depth: DepthThere;
}

export interface StakeOut {
  readonly crossing: CrossingAsBuilt;
  readonly depth: CrossingDepth;
  /** "hinge post (west)" and so on. */
  readonly postNames: { readonly [E in LineEnd]: Message };
  readonly points: readonly StakePoint[];
  readonly steps: readonly StakeStep[];
  /** How far off the line the trench lies at each step is assumed: nobody measured its bow. */
  readonly stepsAssumed: boolean;
  /** Which way is left of the line from the start post to the end post: "north". */
  readonly leftIs: CompassWord;
  readonly rightIs: CompassWord;
  /** Marked posts near enough to be on the sketch. */
  readonly postsNear: readonly FixedPost[];
}

/** A tape of 30 m reaches all posts that are offered. */
const tapeM = 30;
/** Tapes that meet at under this angle make more than 3 cm of 1 cm. */
const flattestDeg = 25;

/** How to find a buried crossing again, by these posts (all that there are) that a tape can be held to. */
export function stakeOut(crossing: CrossingAsBuilt, fixed: readonly FixedPost[]): StakeOut {
  const { shape, bowAssumed, certainty } = crossing;
  const posts = fixed.filter(({ xy }) => xyDistanceM(xy, shape.centre) <= tapeM + shape.gateway.widthM);
  return {
    crossing,
    depth: depthOf(crossing),
    postNames: {
      start: ownPostName(shape, 'start', crossing.movedM > 0),
      end: ownPostName(shape, 'end', crossing.movedM > 0),
    },
    points: pointsToFind(crossing, posts),
    steps: stepsAlong(crossing),
    stepsAssumed: bowAssumed || certainty.basis === 'drawn',
    leftIs: sideOfOpening(shape, 1),
    rightIs: sideOfOpening(shape, -1),
    postsNear: posts,
  };
}

/**
 * A gate's own post with the side that it stands on: "hinge post (west)"; "old hinge post (west)" of one that stands
 * elsewhere now.
 */
function ownPostName(shape: GatewayShape, post: LineEnd, old: boolean): Message {
  const word = gatePostWord(shape, post);
  const single = shape.gateway.leaves === 1;
  const name = single ? message('locate.posts.withSide', { post: word, side: postSide(shape, post) }) : word;
  return old ? message('locate.posts.old', { post: name }) : name;
}

/** What the post of a tape is called by somebody who stands at the gateway. */
function nameHere(from: TieFrom, name: Message, shape: GatewayShape, old = false): Message {
  const isOwn = from.on === 'gatePost' && from.gatewayId === shape.gateway.id;
  return isOwn ? ownPostName(shape, from.post, old) : name;
}

/**
 * The points that were measured, those whose tapes do not meet too; and both feet and the furthest point of the bow, as
 * drawn, where they were not measured.
 */
function pointsToFind(crossing: CrossingAsBuilt, posts: readonly FixedPost[]): StakePoint[] {
  const { points, shape, path, startFoot, endFoot, lengthM } = crossing;
  const has = (...roles: string[]) =>
    points.some(({ point, places }) => places.length > 0 && roles.includes(point.role));
  const drawn = (key: string, label: Message, xy: Xy) => drawnPoint(key, label, xy, crossing, posts);
  const wanted: StakePoint[] = [
    ...(has('startFoot') ? [] : [drawn('start', footLabel(shape, 'start'), startFoot)]),
    ...points.flatMap((solved): StakePoint[] => {
      return solved.basis === 'none' ? [] : [measuredPoint(solved, crossing, posts)];
    }),
    ...(has('bend', 'point') || path.length < 2
      ? []
      : [drawn('middle', message('locate.points.middle'), pointAtStation(path, lengthM / 2).point)]),
    ...(has('endFoot') ? [] : [drawn('end', footLabel(shape, 'end'), endFoot)]),
  ];
  return wanted.sort((p, q) => p.alongTrenchM - q.alongTrenchM);
}

function measuredPoint(solved: SolvedPoint, crossing: CrossingAsBuilt, posts: readonly FixedPost[]): StakePoint {
  const { point, label, by, places } = solved;
  const taped = by === 'ties' || places.length === 0;
  const tapes = taped ? tapesTaken(solved, crossing.shape) : tapesTo(places[0]!.xy, posts, crossing);
  const shown = places.map(({ xy, withinM }) => stakePlace(xy, withinM, tapes, crossing));
  const first = shown[0] ?? null;
  const isAstray = shown.length === 1 && tapes.some(({ gone, movedM }) => gone || movedM > 0);
  const alongTrenchM = first ? alongTrench(first.xy, crossing) : drawnAlong(solved, crossing);
  return {
    key: point.id,
    label,
    by: by ?? 'ties',
    places: shown,
    solved,
    tapes,
    tapesNow: isAstray ? tapesTo(shown[0]!.xy, posts, crossing).filter(({ gone }) => !gone) : [],
    alongTrenchM,
    depth: depthAt(crossing, alongTrenchM),
    weak: first !== null && meetFlat(first.xy, tapes),
  };
}

function drawnPoint(
  key: string,
  label: Message,
  xy: Xy,
  crossing: CrossingAsBuilt,
  posts: readonly FixedPost[],
): StakePoint {
  const tapes = tapesTo(xy, posts, crossing);
  const alongTrenchM = alongTrench(xy, crossing);
  return {
    key,
    label,
    by: crossing.inGround ? 'drawn' : 'planned',
    places: [stakePlace(xy, largestOf(crossing.courses.map(({ withinM }) => withinM)), tapes, crossing)],
    solved: null,
    tapes,
    tapesNow: [],
    alongTrenchM,
    depth: depthAt(crossing, alongTrenchM),
    weak: meetFlat(xy, tapes),
  };
}

function stakePlace(xy: Xy, withinM: number, tapes: readonly StakeTape[], crossing: CrossingAsBuilt): StakePlace {
  const [a, b] = tapes;
  return {
    xy,
    at: crossing.plane.toLonLat(xy),
    withinM,
    side: a && b ? sideOfLine(xy, a.post, b.post) : null,
    offset: offsetOf(xy, crossing.shape),
  };
}

function alongTrench(xy: Xy, { path }: CrossingAsBuilt): number {
  return nearestOnPolyline(xy, path)?.stationM ?? 0;
}

/** Where along the trench a point belongs that nothing places. */
function drawnAlong({ point: { role } }: SolvedPoint, { lengthM }: CrossingAsBuilt): number {
  return role === 'startFoot' ? 0 : role === 'endFoot' ? lengthM : lengthM / 2;
}

function tapesTaken({ ties, point }: SolvedPoint, shape: GatewayShape): StakeTape[] {
  return ties.map(({ name, xy, gone, movedM, distanceM }, i) => {
    const postName = nameHere(point.ties[i]!.from, name, shape, movedM > 0);
    return { postName, post: xy, distanceM, taped: true, gone, movedM };
  });
}

/** From the posts that fix the point best; a point at a post itself is found from that post. */
function tapesTo(xy: Xy, posts: readonly FixedPost[], { shape }: CrossingAsBuilt): StakeTape[] {
  const tape = ({ from, name, xy: post }: FixedPost): StakeTape => {
    const distanceM = xyDistanceM(post, xy);
    return { postName: nameHere(from, name, shape), post, distanceM, taped: false, gone: false, movedM: 0 };
  };
  const at = posts.find((post) => xyDistanceM(post.xy, xy) < 0.02);
  if (at) return [tape(at)];
  const [best] = bestTiePosts(
    posts.map(({ key, xy: post }) => ({ id: key, at: post })),
    xy,
    { count: 2, tapeLengthM: tapeM },
  );
  const chosen = best?.posts.map(({ id }) => id) ?? [];
  if (chosen.length > 0) return posts.filter(({ key }) => chosen.includes(key)).map(tape);
  const own = posts.filter(({ from }) => from.on === 'gatePost' && from.gatewayId === shape.gateway.id);
  return own.length > 0 ? own.map(tape) : tapesToGone(xy, shape);
}

/** Where no post stands any more that would fix it: from where its own gate's posts stood. */
function tapesToGone(xy: Xy, shape: GatewayShape): StakeTape[] {
  const tapes = (['start', 'end'] as const).map((end): StakeTape => {
    const post = end === 'start' ? shape.startPost : shape.endPost;
    const postName = ownPostName(shape, end, false);
    return { postName, post, distanceM: xyDistanceM(post, xy), taped: false, gone: true, movedM: 0 };
  });
  const at = tapes.find(({ distanceM }) => distanceM < 0.02);
  return at ? [at] : tapes;
}

function meetFlat(xy: Xy, tapes: readonly StakeTape[]): boolean {
  if (tapes.length < 2) return false;
  const bearings = tapes.map(({ post }) => xyBearingDeg(post, xy));
  const best = largestOf(
    bearings.flatMap((p, i) => bearings.slice(i + 1).map((q) => Math.abs(Math.sin(((p - q) * Math.PI) / 180)))),
  );
  return best < Math.sin((flattestDeg * Math.PI) / 180);
}

/** Steps of a half, one or two metres, whichever makes up to about a dozen. */
function stepsAlong(crossing: CrossingAsBuilt): StakeStep[] {
  const { path, shape, courses, lengthM } = crossing;
  if (path.length < 2) return [];
  const shown = offsetsAlong(path, shape);
  const all = courses.map((course) => offsetsAlong(course.path, shape));
  const widthM = xyDistanceM(shape.startPost, shape.endPost);
  const stepM = [0.5, 1, 2, 5].find((step) => widthM / step <= 12) ?? 10;
  const marks: number[] = [];
  for (let alongM = stepM; alongM < widthM - 0.1; alongM += stepM) marks.push(alongM);
  return marks.flatMap((alongM): StakeStep[] => {
    const leftMs = all.flatMap((offsets) => offAt(offsets, alongM) ?? []).map(({ leftM }) => leftM);
    if (leftMs.length === 0) return [];
    const stationM = offAt(shown, alongM)?.stationM ?? lengthM / 2;
    return [{ alongM, leftMs: distinct(leftMs), depth: depthAt(crossing, stationM) }];
  });
}

interface Offset {
  readonly alongM: number;
  readonly leftM: number;
  readonly stationM: number;
}

function offsetsAlong(path: readonly Xy[], shape: GatewayShape): Offset[] {
  const stations = cumulativeLengthsM(path);
  return path.map((xy, i) => ({ ...offsetOf(xy, shape), stationM: stations[i]! }));
}

/** Where a course first passes a mark on the line between the posts. */
function offAt(offsets: readonly Offset[], alongM: number): { leftM: number; stationM: number } | null {
  const i = offsets.findIndex((offset, k) => {
    const next = offsets[k + 1];
    return next && (offset.alongM - alongM) * (next.alongM - alongM) <= 0 && offset.alongM !== next.alongM;
  });
  if (i < 0) return null;
  const [p, q] = [offsets[i]!, offsets[i + 1]!];
  const share = (alongM - p.alongM) / (q.alongM - p.alongM);
  return { leftM: p.leftM + share * (q.leftM - p.leftM), stationM: p.stationM + share * (q.stationM - p.stationM) };
}

/** In order, those within a tape's reading of each other as one. */
function distinct(values: readonly number[]): number[] {
  const kept: number[] = [];
  for (const value of values.toSorted((a, b) => a - b)) {
    if (kept.length === 0 || value - kept.at(-1)! > 0.02) kept.push(value);
  }
  return kept;
}
