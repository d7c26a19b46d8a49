import { type Touch, touchesBetween, touchesOfSelf } from '../shapes/touches.ts';
import { isPlaceOnEarth } from '../shapes/workingPlane.ts';
import type { LineChain } from './lineChain.ts';
import type { NetworkDraft } from './networkDraft.ts';

/** Joins live lines wherever they touch each other or themselves. */
export function joinLines(draft: NetworkDraft): void {
  const { chains, toleranceM } = draft;
  for (let i = 0; i < chains.length; i++) {
    const a = chains[i]!;
    for (const touch of touchesOfSelf(a.geometry, toleranceM)) if (!isClosing(a, touch)) joinAt(draft, a, a, touch);
    for (const j of draft.chainsNear(a.geometry.box)) {
      if (j <= i) continue;
      const b = chains[j]!;
      for (const touch of touchesBetween(a.geometry, b.geometry, toleranceM)) joinAt(draft, a, b, touch);
    }
  }
}

function isClosing({ geometry }: LineChain, { aM, bM }: Touch): boolean {
  return geometry.closed && aM === 0 && bM === geometry.lengthM;
}

function joinAt(draft: NetworkDraft, a: LineChain, b: LineChain, touch: Touch): void {
  const key = `join:${a.line.id}:${b.line.id}`;
  const onA = a.touch(touch.aM, touch.xy, draft.toleranceM, key);
  const onB = b.touch(touch.bM, touch.xy, draft.toleranceM, key);
  if ('gateway' in onA) draft.report('touchInOpening', [onA.gateway.id, b.line.id], touch.at);
  else if ('gateway' in onB) draft.report('touchInOpening', [onB.gateway.id, a.line.id], touch.at);
  else {
    draft.joints.join(onA.joint, onB.joint);
    draft.joints.addRole(onA.joint, 'junction');
  }
}

/** Makes strainers and angle posts nodes of the lines that they stand on. They join nothing. */
export function markPosts(draft: NetworkDraft): void {
  for (const post of draft.project.post.values()) {
    if (post.role === 'other' || !isPlaceOnEarth(post.at)) continue;
    const joints = draft.jointsAt(draft.plane.toXy(post.at), `post:${post.id}`);
    for (const joint of joints) draft.joints.addRole(joint, 'post');
  }
}
