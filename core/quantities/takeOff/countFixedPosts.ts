import { type Message, message } from '../../words/message.ts';
import { measureOf, workMeasure } from '../measures.ts';
import { endsByPost, type FenceEnd } from './countFence.ts';
import type { FencePost, FencePosts } from './fencePosts.ts';
import type { TakeOffInput } from './input.ts';
import type { Tally } from './tally.ts';

/**
 * The fixed posts themselves, each once, and what the wires need at them. One stay for every fence that ends on a post
 * (common practice, no source); a strain insulator for every live wire that ends there; a joint clamp for every live
 * wire where live wires meet, be it of two fences or of one with several wires (at gate posts the crossing's clamps do
 * that). Earth-return wires are joined in the same way, each to its like.
 */
export function countFixedPosts(input: TakeOffInput, fence: FencePosts, tally: Tally): void {
  for (const [post, ends] of endsByPost(input, fence)) {
    const counted = ends.filter((end) => end.counted);
    if (counted.length === 0) continue;
    const at = fence.posts[post]!;
    if (!standsAlready(ends, at)) countPost(at, counted, nameOf(at, ends), tally);
    for (const end of counted) countEnd(end, nameOf(at, ends), tally);
    countJoints(ends, nameOf(at, ends), 'live', tally);
    countJoints(ends, nameOf(at, ends), 'earth', tally);
  }
}

function countPost(post: FencePost, counted: readonly FenceEnd[], name: Message, tally: Tally): void {
  const owners = ownersOf(counted, post);
  if (post.role === 'gatePost' || post.role === 'strainer') {
    tally.add(measureOf(post.role), owners, 1, name);
    tally.add(workMeasure('strainer'), owners, 1, name);
  } else {
    tally.add(measureOf(post.role === 'angle' ? 'anglePost' : 'post'), owners, 1, name);
  }
}

function countEnd({ line, type, station, tied }: FenceEnd, name: Message, tally: Tally): void {
  if (!tied) return;
  const owner = [station.gateway?.id ?? line.line.id];
  tally.add(measureOf('stay'), owner, 1, message('order.pieces.stay', { line: line.line.name, at: name }));
  const live = line.line.live ? type.liveWires : 0;
  const text = message('order.pieces.liveWires', { line: line.line.name, count: live, at: name });
  tally.add(measureOf('strainInsulator'), owner, live, text);
}

function countJoints(ends: readonly FenceEnd[], name: Message, which: 'live' | 'earth', tally: Tally): void {
  const wiresOf = ({ type }: FenceEnd) => (which === 'live' ? type.liveWires : type.earthWires);
  const alike = ends.filter((end) => end.line.line.live && wiresOf(end) > 0);
  const joined = alike.filter(({ station }) => station.gateway === null);
  const meeting = alike.length > 1 && alike.some(({ tied }) => tied);
  const owners = [...new Set(alike.filter(({ counted }) => counted).map(({ line }) => line.line.id))];
  // Those that stand already are joined already.
  if (owners.length === 0) return;
  for (const end of joined) {
    const wires = wiresOf(end);
    const alone = !meeting && end.tied && wires > 1;
    if (!(meeting || alone)) continue;
    const said = { line: end.line.line.name, count: wires, at: name };
    tally.add(measureOf('joint'), owners, wires, message(`order.pieces.${which}Wires`, said));
  }
}

/** A post of what is built stands already, unless the wires only pass there and no post was asked for. */
function standsAlready(ends: readonly FenceEnd[], post: FencePost): boolean {
  return ends.some(({ counted, tied }) => !counted && (tied || post.marked !== null));
}

function ownersOf(counted: readonly FenceEnd[], { marked }: FencePost): string[] {
  const gateways = counted.flatMap(({ station }) => station.gateway?.id ?? []);
  const lines = counted.map(({ line }) => line.line.id);
  return [...new Set([...(gateways.length > 0 ? gateways : lines), ...(marked ? [marked.id] : [])])];
}

function nameOf(post: FencePost, ends: readonly FenceEnd[]): Message {
  const gateways = [...new Set(ends.flatMap(({ station }) => station.gateway?.name ?? []))];
  const lines = [...new Set(ends.map(({ line }) => line.line.name))];
  if (post.marked) return message('order.posts.marked', { post: post.marked.name, lines });
  if (gateways.length > 0) return message('order.posts.ofGate', { gateways });
  if (lines.length > 1) return message('order.posts.meeting', { lines });
  const which = ends.length > 1 ? 'corner' : post.role === 'angle' ? 'bend' : 'end';
  return message(`order.posts.${which}`, { line: lines[0]! });
}
