import type { Xy } from '../../../core/geometry/types.ts';
import { keptFor } from '../../../core/model/memo.ts';
import { candidateMapId, findingMapId, type MapId, type MapInput } from '../mapTypes.ts';
import type { Scene } from './buildScene.ts';
import type { Part, PiecePart } from './parts.ts';

const pieceOfEdge = keptFor(({ parts }: Scene): ReadonlyMap<number, PiecePart> => {
  const pieces = parts.filter((part) => part.kind === 'piece');
  return new Map(pieces.map((piece) => [piece.edge, piece]));
});

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
