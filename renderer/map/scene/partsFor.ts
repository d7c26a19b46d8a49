import type { Xy } from '../../../core/geometry/types.ts';
import { candidateMapId, findingMapId, type MapId, type MapInput } from '../mapTypes.ts';
import type { Scene } from './buildScene.ts';
import type { Part, PiecePart } from './parts.ts';

const piecesByEdge = new WeakMap<Scene, ReadonlyMap<number, PiecePart>>();

function pieceOfEdge(scene: Scene): ReadonlyMap<number, PiecePart> {
  let known = piecesByEdge.get(scene);
  if (!known) {
    const pieces = scene.parts.filter((part) => part.kind === 'piece');
    known = new Map(pieces.map((piece) => [piece.edge, piece]));
    piecesByEdge.set(scene, known);
  }
  return known;
}

/** What an id stands for on the map: its parts, and places that are not parts (findings, suggested switches). */
export function partsFor(scene: Scene, input: MapInput, id: MapId): { parts: readonly Part[]; places: readonly Xy[] } {
  const own = scene.partsOf.get(id);
  if (own) return { parts: own, places: [] };
  if (id.startsWith('section:')) {
    const section = scene.survey.sections.find(({ letter }) => id === `section:${letter}`);
    const pieces = pieceOfEdge(scene);
    return { parts: (section?.edges ?? []).flatMap((edge) => pieces.get(edge) ?? []), places: [] };
  }
  if (id.startsWith('candidate:')) {
    const candidate = input.plan?.candidates.find((each) => id === candidateMapId(each));
    return { parts: [], places: candidate ? [candidate.xy] : [] };
  }
  const finding = id.startsWith('finding:') ? input.findings.find((each) => id === findingMapId(each)) : undefined;
  if (!finding) return { parts: [], places: [] };
  if (finding.at) return { parts: [], places: [scene.plane.toXy(finding.at)] };
  return { parts: finding.thingIds.flatMap((thing) => scene.partsOf.get(thing) ?? []), places: [] };
}
