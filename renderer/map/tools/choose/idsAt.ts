import type { Finding } from '../../../../core/checks/finding.ts';
import { badgeMm } from '../../../../core/drawing/signs/findingSign.ts';
import type { Xy } from '../../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../../core/geometry/vector.ts';
import { byGravity } from '../../findings.ts';
import { candidateMapId, findingMapId, type MapId, type MapInput, sectionMapId } from '../../mapTypes.ts';
import { findingUnitPx } from '../../plane/screenPen.ts';
import type { Scene } from '../../scene/buildScene.ts';
import { pick } from '../../scene/pick.ts';

const candidateReachPx = 14;

/**
 * What may be chosen under a point, the likeliest meant first. Where sections are shown a fence stands for its section
 * first, and for itself with the next click.
 */
export function idsAt(scene: Scene, input: MapInput, at: Xy, pxPerM: number): MapId[] {
  const ids: MapId[] = [];
  for (const candidate of input.plan?.missing ?? []) {
    if (xyDistanceM(candidate.xy, at) * pxPerM <= candidateReachPx) ids.push(candidateMapId(candidate));
  }
  const finding = findingAt(scene, input, at, pxPerM);
  if (finding) ids.push(findingMapId(finding));
  const bySection = input.workspace === 'divide' || input.workspace === 'find';
  for (const { part } of pick(scene, at, pxPerM, input.chosen)) {
    if (bySection && part.kind === 'piece') {
      const section = scene.survey.sections[scene.survey.sectionOfEdge[part.edge] ?? -1];
      if (section) ids.push(sectionMapId(section.letter));
    }
    ids.push(part.id);
  }
  return [...new Set(ids)];
}

/** The finding whose badge (not whose whole ring, which lies over the drawing) is under a point. */
export function findingAt(scene: Scene, input: MapInput, at: Xy, pxPerM: number): Finding | null {
  const away = (badgeMm * findingUnitPx) / pxPerM;
  for (const finding of byGravity(input.findings).reverse()) {
    if (!finding.at) continue;
    const [x, y] = scene.plane.toXy(finding.at);
    if (xyDistanceM([x + away, y + away], at) * pxPerM <= 11) return finding;
  }
  return null;
}
