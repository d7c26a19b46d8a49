import type { Figures, Phrase } from '../../types.ts';
import { compass } from '../things.ts';

type Side = keyof typeof compass;

const ordinals = ['first', 'second', 'third', 'fourth'];

/** Posts that a tape is held to. */
export const posts = {
  /** By the name that it was given. */
  named: ({ name }: { name: string }) => name,
  /** Only numbered. */
  numbered: ({ name }: { name: string }) => `post ${name}`,
  unknown: 'a post',
  hinge: 'hinge post',
  latch: 'latch post',
  /** Of a gate that hangs from both. */
  onSide: ({ side }: { side: Side }) => `${compass[side]} post`,
  ofGate: ({ post, gateway }: { post: Phrase; gateway: string }, f: Figures) => `${f.say(post)} of ${gateway}`,
  withSide: ({ post, side }: { post: Phrase; side: Side }, f: Figures) => `${f.say(post)} (${compass[side]})`,
  /** It stands elsewhere now. */
  old: ({ post }: { post: Phrase }, f: Figures) => `old ${f.say(post)}`,
  /** With what has become of it since a tape was held to it. */
  stood: ({ post, gone, movedM }: { post: Phrase; gone: boolean; movedM: number }, f: Figures) => {
    if (gone) return `${f.say(post)} (no longer drawn)`;
    return movedM > 0 ? `${f.say(post)} (stood ${f.tape(movedM)} from where it is drawn now)` : f.say(post);
  },
};

/** Points of a trench, and the places where one can be. */
export const points = {
  named: ({ name }: { name: string }) => name,
  foot: ({ side }: { side: Side }) => `${compass[side]} riser foot`,
  riserFoot: 'riser foot',
  bend: 'bend',
  point: 'point',
  middle: 'middle of the trench',
  side: ({ side }: { side: Side }) => `${compass[side]} side`,
  nth: ({ index }: { index: number }) => (ordinals[index] ? `${ordinals[index]} place` : `place ${index + 1}`),
  whichSide: ({ sides }: { sides: readonly Side[] }) =>
    `Which side: ${sides.map((side) => compass[side]).join(' or ')}?`,
  whichPlace: ({ count }: { count: number }) =>
    `Which place: ${Array.from({ length: count }, (_, i) => ordinals[i] ?? `place ${i + 1}`).join(' or ')}?`,
};
