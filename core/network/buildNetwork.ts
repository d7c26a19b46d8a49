import type { Project } from '../model/project.ts';
import { bridgeGateways } from './bridgeGateways.ts';
import { connectEnergisers } from './connectEnergisers.ts';
import { joinLines, markPosts } from './joinLines.ts';
import { layLines } from './layLines.ts';
import { NetworkDraft } from './networkDraft.ts';
import { numberNodes } from './numberNodes.ts';
import { placeSwitches } from './placeSwitches.ts';
import type { Network } from './types.ts';

/**
 * The live fences of a project as an electrical network, by these rules:
 *
 * - An end or vertex within the snap tolerance of another live line, or of another part of its own, joins there. Lines
 *   that cross where neither has a vertex do not join.
 * - The wires of a line stop at the posts of its gateways. What touches a gate post joins there; what touches inside
 *   the opening joins nothing. Only a crossing bridges the opening.
 * - A switch at a gate post stands in the run outside the opening (run, switch, post); one at a line's end between the
 *   joint and the line; one along a line cuts it there, and what joins the line at that very place stays with the side
 *   of its start; one at a lead-out between the cable and the fence.
 * - A lead-out joins every live line within the tolerance of its last vertex. An energiser without a lead-out joins
 *   those within the tolerance of where it stands.
 * - Strainers and angle posts on a line are nodes of it, and join nothing by themselves.
 *
 * What cannot be taken at its word is in `problems`. Lengths are geodesic; between vertices places are linear in the
 * working plane. What two paths have to do with each other is kept with the paths, so that after an edit only what
 * changed is worked out again.
 */
export function buildNetwork(project: Project): Network {
  const draft = new NetworkDraft(project);
  layLines(draft);
  joinLines(draft);
  markPosts(draft);
  const atLeadOuts = placeSwitches(draft);
  const sources = connectEnergisers(draft, atLeadOuts);
  for (const chain of draft.chains) chain.emit(draft.edges);
  bridgeGateways(draft);
  return numberNodes(draft, sources);
}
