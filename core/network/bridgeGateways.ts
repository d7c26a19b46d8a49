import { crossingFigures } from '../shapes/crossingFigures.ts';
import { gatewaySpan } from '../shapes/gatewaySpan.ts';
import { lonLatAt } from '../shapes/measuredPath.ts';
import type { NetworkDraft } from './networkDraft.ts';

/** Joins the posts of each gateway of a live line that has a crossing. */
export function bridgeGateways(draft: NetworkDraft): void {
  const bridged = new Map<string, string>();
  for (const crossing of draft.project.crossing.values()) {
    const { id, gatewayId } = crossing;
    const gateway = draft.project.gateway.get(gatewayId);
    if (!gateway) {
      draft.report('crossingWithoutGateway', [id], null);
      continue;
    }
    const chain = draft.chainOf.get(gateway.lineId);
    const other = bridged.get(gatewayId);
    if (other) {
      const at = chain ? lonLatAt(chain.geometry, gateway.atM) : null;
      draft.report('crossingDoubled', [other, id, gatewayId], at);
      continue;
    }
    bridged.set(gatewayId, id);
    const posts = chain?.posts.get(gatewayId);
    if (!posts) continue;
    const span = gatewaySpan(gateway, chain!.geometry);
    draft.edges.push({
      kind: 'crossing',
      key: `crossing:${id}`,
      from: posts.start.joint,
      to: posts.end.joint,
      gatewayId,
      crossingId: id,
      cableLengthM: crossingFigures(crossing, gateway, span, draft.property.crossings).liveCableM,
    });
  }
}
