import type { LonLat, Xy } from '../geometry/types.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import type { FenceLine, LineEnd } from '../model/things.ts';
import type { GatewaySpan } from '../shapes/gatewaySpan.ts';
import { leastLengthM, lonLatAt, type MeasuredPath, wrapStation, xyAt } from '../shapes/measuredPath.ts';
import type { Joints } from './joints.ts';
import type { EdgeDraft } from './networkDraft.ts';

/** A place on a live line where the wire ends, meets something or is cut. */
export interface Stop {
  readonly stationM: number;
  /** Order of stops at the same station. */
  readonly rank: number;
  /** Where other things join. */
  readonly joint: number;
  /** Ends of the wire on the side of the line's start and of its end; other than `joint` where a switch stands between. */
  below: number;
  above: number;
}

const rankOf = { lineStart: 0, gateEnd: 1, between: 2, gateStart: 3, lineEnd: 4 };

const noPosts: LineChain['posts'] = new Map();

/** A point and a post near it are on the same pass of the line if it takes no longer than this from one to the other. */
const samePassTolerances = 4;

/** A live fence line as a row of stops, with wire between them except in the openings of its gateways. */
export class LineChain {
  readonly line: FenceLine;
  readonly geometry: MeasuredPath;
  readonly liveWires: number;
  readonly spans: readonly GatewaySpan[];
  /** Null where the closing vertex of a closed line lies in an opening. */
  readonly ends: Readonly<Record<LineEnd, Stop>> | null;
  readonly posts: ReadonlyMap<string, Readonly<Record<LineEnd, Stop>>>;
  readonly #joints: Joints;
  readonly #stops: Stop[] = [];
  /** By millimetre. Most lines have none. */
  #between: Map<number, Stop> | null = null;

  /** `spans` are those that have an opening; posts of neighbours that overlap by no more than the tolerance are one. */
  constructor(
    line: FenceLine,
    geometry: MeasuredPath,
    liveWires: number,
    spans: readonly GatewaySpan[],
    joints: Joints,
    toleranceM: number,
  ) {
    this.line = line;
    this.geometry = geometry;
    this.liveWires = liveWires;
    this.spans = spans;
    this.#joints = joints;
    this.ends = spans.some((span) => span.openings.length > 1)
      ? null
      : { start: this.#lineEnd('start'), end: this.#lineEnd('end') };
    if (this.ends && geometry.closed) joints.join(this.ends.start.joint, this.ends.end.joint);
    this.posts = this.#standPosts(toleranceM);
  }

  /**
   * The stop where something at `point` touches the line at a station: a gate post (or an end, on a line with gateways)
   * within the tolerance of it, else a stop of its own, called `key`. The span whose opening it is in where there is no wire to touch.
   */
  touch(stationM: number, point: Xy, toleranceM: number, key: string): Stop | GatewaySpan {
    const post = this.#postNear(stationM, point, toleranceM);
    if (post) return post;
    return this.openingAt(stationM) ?? this.stopAt(stationM, key);
  }

  /** The stop at a station outside the openings; made where there is none. */
  stopAt(stationM: number, key: string): Stop {
    const { geometry } = this;
    if (this.ends && stationM <= leastLengthM) return this.ends.start;
    if (this.ends && stationM >= geometry.lengthM - leastLengthM) return this.ends.end;
    const bucket = Math.round(stationM / leastLengthM);
    this.#between ??= new Map();
    let stop = this.#between.get(bucket);
    if (!stop) {
      const joint = this.#joints.add('join', key, xyAt(geometry, stationM), () => lonLatAt(geometry, stationM));
      stop = this.#addStop(stationM, rankOf.between, joint);
      this.#between.set(bucket, stop);
    }
    return stop;
  }

  /** The gateway in whose opening a station lies, strictly between its posts. */
  openingAt(stationM: number): GatewaySpan | undefined {
    if (this.spans.length === 0) return undefined;
    return this.spans.find((span) =>
      span.openings.some(([fromM, toM]) => {
        // Where an opening runs to the closing vertex there is no post.
        const post = span.openings.length === 1;
        const afterFrom = stationM > fromM + leastLengthM || (!post && fromM === 0);
        const beforeTo = stationM < toM - leastLengthM || (!post && toM === this.geometry.lengthM);
        return afterFrom && beforeTo;
      }),
    );
  }

  /** The gate post that stands at a station, give or take a millimetre. */
  postAt(stationM: number): { readonly gatewayId: string; readonly post: LineEnd } | null {
    for (const [gatewayId, posts] of this.posts) {
      for (const post of ['start', 'end'] as const) {
        if (Math.abs(posts[post].stationM - stationM) <= leastLengthM) return { gatewayId, post };
      }
    }
    return null;
  }

  /** Puts a switch on one side of a stop, outside of any that is there; gives the joints of its wire and inner side. */
  cut(stop: Stop, side: 'below' | 'above', switchId: string): { readonly wire: number; readonly inner: number } {
    const { geometry } = this;
    const inner = stop[side];
    const wire = this.#joints.add('switch', `switch:${switchId}`, this.#joints.xyOf(stop.joint), () =>
      lonLatAt(geometry, stop.stationM),
    );
    this.#joints.addRole(inner, 'switch');
    stop[side] = wire;
    return { wire, inner };
  }

  /**
   * Adds the runs between the stops, once all of them are known; they are named when their nodes are. Stops less than a
   * millimetre apart become one.
   */
  emit(edges: EdgeDraft[]): void {
    const { line, liveWires } = this;
    const stops = this.#stops.sort((a, b) => a.stationM - b.stationM || a.rank - b.rank);
    const openings = this.#openings();
    let next = 0;
    let openToM = -1;
    for (let i = 1; i < stops.length; i++) {
      const before = stops[i - 1]!;
      const after = stops[i]!;
      if (after.stationM - before.stationM <= leastLengthM) {
        this.#joints.join(before.above, after.below);
        continue;
      }
      const middleM = (before.stationM + after.stationM) / 2;
      while (next < openings.length && openings[next]![0] <= middleM) openToM = Math.max(openToM, openings[next++]![1]);
      if (middleM < openToM) continue;
      const [fromM, toM] = [before.stationM, after.stationM];
      const lengthM = toM - fromM;
      const [from, to] = [before.above, after.below];
      edges.push({ kind: 'run', key: '', from, to, lineId: line.id, fromM, toM, lengthM, liveWires });
    }
  }

  /** In order along the line. */
  #openings(): GatewaySpan['openings'] {
    if (this.spans.length === 0) return [];
    return this.spans.flatMap((span) => span.openings).sort((a, b) => a[0] - b[0]);
  }

  #lineEnd(end: LineEnd): Stop {
    const { line, geometry } = this;
    const vertex = end === 'start' ? 0 : geometry.xy.length - 1;
    const at = geometry.path[vertex]!;
    const kind = geometry.closed ? 'join' : 'lineEnd';
    const joint = this.#joints.add(kind, `end:${line.id}:${end}`, geometry.xy[vertex]!, () => at);
    return this.#addStop(geometry.stationsM[vertex]!, end === 'start' ? rankOf.lineStart : rankOf.lineEnd, joint);
  }

  #standPosts(toleranceM: number): LineChain['posts'] {
    if (this.spans.length === 0) return noPosts;
    const posts = new Map<string, Readonly<Record<LineEnd, Stop>>>();
    let lastEndM = -Infinity;
    for (const [i, span] of this.spans.entries()) {
      const next = this.spans[i + 1];
      const fromM = sharedStation(lastEndM, span.fromM, toleranceM) ?? span.fromM;
      const toM = (next && sharedStation(span.toM, next.fromM, toleranceM)) ?? span.toM;
      const { gateway, startPostAt, endPostAt } = span;
      posts.set(gateway.id, {
        start: this.#post(`gate:${gateway.id}:start`, span.startPost, startPostAt, fromM, rankOf.gateStart),
        end: this.#post(`gate:${gateway.id}:end`, span.endPost, endPostAt, toM, rankOf.gateEnd),
      });
      lastEndM = span.toM;
    }
    return posts;
  }

  #post(key: string, xy: Xy, at: LonLat, stationM: number, rank: number): Stop {
    const joint = this.#joints.add('gatePost', key, xy, () => at);
    return this.#addStop(wrapStation(stationM, this.geometry), rank, joint);
  }

  /**
   * The gate post within reach of a point that touches the line at a station. Where an end of the line is as near, the end: a switch at a post that stands
   * at the line's end then parts the gateway from what the line takes off from.
   */
  #postNear(stationM: number, point: Xy, toleranceM: number): Stop | null {
    if (this.spans.length === 0) return null;
    let nearest: Stop | null = null;
    let nearestM = toleranceM;
    const consider = (stop: Stop, xy: Xy): void => {
      // Where the line passes the point more than once, what stands on another pass is not meant.
      if (this.#alongM(stop.stationM, stationM) > samePassTolerances * toleranceM) return;
      const distanceM = xyDistanceM(point, xy);
      if (distanceM > nearestM || (nearest && distanceM === nearestM)) return;
      nearest = stop;
      nearestM = distanceM;
    };
    const { xy } = this.geometry;
    if (this.ends && !this.geometry.closed) {
      consider(this.ends.start, xy[0]!);
      consider(this.ends.end, xy.at(-1)!);
    }
    for (const { gateway, startPost, endPost } of this.spans) {
      const posts = this.posts.get(gateway.id)!;
      consider(posts.start, startPost);
      consider(posts.end, endPost);
    }
    return nearest;
  }

  /** How far apart two stations are, on a closed line the shorter way. */
  #alongM(a: number, b: number): number {
    const apartM = Math.abs(a - b);
    return this.geometry.closed ? Math.min(apartM, this.geometry.lengthM - apartM) : apartM;
  }

  #addStop(stationM: number, rank: number, joint: number): Stop {
    const stop: Stop = { stationM, rank, joint, below: joint, above: joint };
    this.#stops.push(stop);
    return stop;
  }
}

/** Halfway, where an opening ends a little past the beginning of the next. */
function sharedStation(endM: number, startM: number, toleranceM: number): number | null {
  const overlapM = endM - startM;
  return overlapM > 0 && overlapM <= toleranceM ? (endM + startM) / 2 : null;
}
