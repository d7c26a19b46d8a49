import type { Xy } from '../geometry/types.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import type { Project } from '../model/project.ts';
import type { TapeTie, TieFrom } from '../model/recordThings.ts';
import type { LineEnd, LonLat } from '../model/things.ts';
import type { GatewayShape } from '../shapes/types.ts';
import type { Survey } from '../survey/types.ts';
import { type Message, message } from '../words/message.ts';
import { postSide } from './compass.ts';

/** Something that does not move and that a tape can be held to. */
export interface FixedPost {
  /** `post:ID`, `gatePost:ID:start` or `gatePost:ID:end`. */
  readonly key: string;
  readonly from: TieFrom;
  readonly name: Message;
  readonly at: LonLat;
  readonly xy: Xy;
}

export function tieFromKey(from: TieFrom): string {
  return from.on === 'post' ? `post:${from.postId}` : `gatePost:${from.gatewayId}:${from.post}`;
}

/** The posts of all gateways, and all marked posts. */
export function fixedPosts(project: Project, survey: Survey): FixedPost[] {
  const ofGateways = [...survey.gateways.keys()].flatMap((gatewayId) =>
    (['start', 'end'] as const).map((post) => ({ on: 'gatePost', gatewayId, post }) as const),
  );
  const marked = [...project.post.keys()].map((postId) => ({ on: 'post', postId }) as const);
  return [...ofGateways, ...marked].flatMap((from) => fixedPost(from, project, survey) ?? []);
}

/** The post itself, or null where it is gone. */
export function fixedPost(
  from: TieFrom,
  project: Project,
  survey: Pick<Survey, 'plane' | 'gateways'>,
): FixedPost | null {
  const key = tieFromKey(from);
  if (from.on === 'post') {
    const post = project.post.get(from.postId);
    return post ? { key, from, name: postName(post.name), at: post.at, xy: survey.plane.toXy(post.at) } : null;
  }
  const shape = survey.gateways.get(from.gatewayId);
  if (!shape) return null;
  const [at, xy] = from.post === 'start' ? [shape.startPostAt, shape.startPost] : [shape.endPostAt, shape.endPost];
  return { key, from, name: gatePostName(shape, from.post), at, xy };
}

/** The post that a tape was held to, where it stood then. */
export interface StoodPost {
  readonly name: Message;
  readonly xy: Xy;
  /** It is no longer drawn. */
  readonly gone: boolean;
  /** How far it is drawn from there now, metres; 0 where it is gone, or as near as a tape can tell. */
  readonly movedM: number;
}

/** Nearer than this a post is drawn where it stood. */
export const samePostM = 0.05;

/** Where a tie was taped from: where the post stood then, whatever has become of it in the drawing. */
export function postOfTie(tie: TapeTie, project: Project, survey: Pick<Survey, 'plane' | 'gateways'>): StoodPost {
  const xy = survey.plane.toXy(tie.postAt);
  const post = fixedPost(tie.from, project, survey);
  if (!post) return { name: keptPostName(tie), xy, gone: true, movedM: 0 };
  const apartM = xyDistanceM(post.xy, xy);
  return { name: post.name, xy, gone: false, movedM: apartM < samePostM ? 0 : apartM };
}

/** What a post was called when a tape was held to it. */
export function keptPostName({ postName: name }: Pick<TapeTie, 'postName'>): Message {
  return name === '' ? message('locate.posts.unknown') : message('locate.posts.named', { name });
}

/** "hinge post of G4" */
export function gatePostName(shape: HungGate, post: LineEnd): Message {
  return message('locate.posts.ofGate', { post: gatePostWord(shape, post), gateway: shape.gateway.name });
}

/** A gate, and which way it runs from its start post to its end post. */
export type HungGate = Pick<GatewayShape, 'gateway' | 'bearingDeg'>;

/**
 * What a gate's post is called on the ground: a single gate hangs from one and shuts against the other; of a double one
 * by the side that it stands on.
 */
export function gatePostWord({ gateway: { leaves, hungFrom }, bearingDeg }: HungGate, post: LineEnd): Message {
  if (leaves === 2) return message('locate.posts.onSide', { side: postSide({ bearingDeg }, post) });
  return message(post === hungFrom ? 'locate.posts.hinge' : 'locate.posts.latch');
}

/** "post P4" of a post that is only numbered; its own name otherwise. */
function postName(name: string): Message {
  return message(/^P?\d+$/.test(name) ? 'locate.posts.numbered' : 'locate.posts.named', { name });
}
