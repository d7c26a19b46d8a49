import type { FenceLine } from '../model/things.ts';
import { type GatewaySpan, gatewaySpan } from '../shapes/gatewaySpan.ts';
import { leastLengthM, measuredPath } from '../shapes/measuredPath.ts';
import { isPlaceOnEarth } from '../shapes/workingPlane.ts';
import { LineChain } from './lineChain.ts';
import type { NetworkDraft } from './networkDraft.ts';

const noSpans: readonly GatewaySpan[] = [];

/** Lays the live lines with the openings of their gateways. Lines that are no lines are named and left out. */
export function layLines(draft: NetworkDraft): void {
  const { project, plane, joints, toleranceM } = draft;
  const spansOf = spansByLine(draft);
  const chains: LineChain[] = [];
  for (const line of project.fenceLine.values()) {
    const geometry = measuredPath(line.path, plane);
    if (!geometry) {
      draft.report('lineNotOnEarth', [line.id], line.path.find(isPlaceOnEarth) ?? null);
    } else if (geometry.lengthM <= leastLengthM) {
      draft.report('lineWithoutLength', [line.id], line.path[0]!);
    } else if (line.live) {
      const spans = openSpans(draft, spansOf.get(line.id) ?? noSpans);
      chains.push(new LineChain(line, geometry, liveWires(draft, line), spans, joints, toleranceM));
    }
  }
  draft.layChains(chains);
}

function liveWires(draft: NetworkDraft, line: FenceLine): number {
  const wires = draft.project.fenceType.get(line.typeId)?.liveWires ?? 0;
  if (wires >= 1) return wires;
  draft.report('lineWithoutLiveWires', [line.id], line.path[0]!);
  return 1;
}

function spansByLine(draft: NetworkDraft): Map<string, GatewaySpan[]> {
  const spansOf = new Map<string, GatewaySpan[]>();
  for (const gateway of draft.project.gateway.values()) {
    const line = draft.project.fenceLine.get(gateway.lineId);
    const geometry = line && measuredPath(line.path, draft.plane);
    if (!geometry) {
      draft.report('gatewayWithoutLine', [gateway.id], null);
      continue;
    }
    const span = gatewaySpan(gateway, geometry);
    const spans = spansOf.get(line.id);
    if (spans) spans.push(span);
    else spansOf.set(line.id, [span]);
    reportFault(draft, span);
  }
  return spansOf;
}

function reportFault(draft: NetworkDraft, { gateway, fault, faultM, startPostAt }: GatewaySpan): void {
  if (fault === 'widerThanLine') {
    draft.report('gatewayWiderThanLine', [gateway.id, gateway.lineId], startPostAt, faultM);
  } else if (faultM > 0) {
    draft.report('gatewayBeyondLine', [gateway.id, gateway.lineId], startPostAt, faultM);
  } else if (fault === 'noOpening') {
    draft.report('gatewayWithoutWidth', [gateway.id], startPostAt);
  }
}

/** Those with an opening, in order along the line; overlaps of more than the tolerance are named. */
function openSpans(draft: NetworkDraft, all: readonly GatewaySpan[]): GatewaySpan[] {
  const spans = all.filter((span) => span.openings.length > 0).sort((a, b) => a.fromM - b.fromM || a.toM - b.toM);
  if (spans.length < 2) return spans;
  const openings = spans
    .flatMap((span) => span.openings.map(([fromM, toM]) => ({ span, fromM, toM })))
    .sort((a, b) => a.fromM - b.fromM);
  let furthest = openings[0];
  for (const opening of openings.slice(1)) {
    const overlapM = Math.min(furthest!.toM, opening.toM) - opening.fromM;
    if (overlapM > Math.max(draft.toleranceM, leastLengthM) && furthest!.span !== opening.span) {
      const ids = [furthest!.span.gateway.id, opening.span.gateway.id];
      draft.report('gatewaysOverlap', ids, opening.span.startPostAt, overlapM);
    }
    if (opening.toM > furthest!.toM) furthest = opening;
  }
  return spans;
}
