import { turnAngleDeg } from '../../../core/geometry/vector.ts';
import { keptWhile } from '../../../core/model/memo.ts';
import type { LineShape } from '../../../core/shapes/types.ts';
import { message } from '../../../core/words/message.ts';
import type { Landmark } from '../interaction/gatewaySnap.ts';
import type { Scene } from '../scene/buildScene.ts';
import { placeOnLine } from './nearestLine.ts';

/** A bend of at least this much has a post that a gate can hang from. */
const cornerDeg = 15;
/** Posts nearer to a line than this stand on it. */
const onLineM = 0.5;

/** What a gate on this line can hang from or shut against, in order: its ends, its corners, posts and lines that join it. */
export function landmarksOf(scene: Scene, shape: LineShape): readonly Landmark[] {
  return landmarksIn(shape, scene);
}

const landmarksIn = keptWhile((shape: LineShape, scene: Scene): readonly Landmark[] => findLandmarks(scene, shape));

function findLandmarks(scene: Scene, shape: LineShape): Landmark[] {
  const { line, xy, stationsM, lengthM } = shape;
  const found: Landmark[] = [
    { atM: 0, spot: message('window.map.spots.lineStarts', { name: line.name }) },
    { atM: lengthM, spot: message('window.map.spots.lineEnds', { name: line.name }) },
  ];
  for (let i = 1; i < xy.length - 1; i++) {
    if (Math.abs(turnAngleDeg(xy[i - 1]!, xy[i]!, xy[i + 1]!)) < cornerDeg) continue;
    found.push({ atM: stationsM[i]!, spot: message('window.map.spots.aCorner', { name: line.name }) });
  }
  for (const part of partsBeside(scene, shape)) {
    const spots =
      part.kind === 'post'
        ? [{ xy: part.xy, spot: message('window.map.spots.post', { name: part.post.name }) }]
        : part.kind === 'piece' && part.id !== line.id
          ? [part.xy[0]!, part.xy.at(-1)!].map((end) => ({
              xy: end,
              spot: message('window.map.spots.join', { name: part.shape.line.name }),
            }))
          : [];
    for (const { xy: at, spot } of spots) {
      const place = placeOnLine(shape, at);
      if (place && place.distanceM <= onLineM) found.push({ atM: place.atM, spot });
    }
  }
  return oneEach(found.sort((a, b) => a.atM - b.atM));
}

function partsBeside(scene: Scene, { line }: LineShape) {
  const beside = new Set<ReturnType<Scene['search']>[number]>();
  for (const piece of scene.partsOf.get(line.id) ?? []) {
    const [west, south, east, north] = piece.box;
    for (const part of scene.search([west - onLineM, south - onLineM, east + onLineM, north + onLineM])) {
      beside.add(part);
    }
  }
  return beside;
}

/** Landmarks at one place are one; the last added names it best (a post before the corner it stands at). */
function oneEach(inOrder: readonly Landmark[]): Landmark[] {
  const kept: Landmark[] = [];
  for (const landmark of inOrder) {
    const before = kept.at(-1);
    if (before && landmark.atM - before.atM < onLineM) kept[kept.length - 1] = { ...landmark, atM: before.atM };
    else kept.push(landmark);
  }
  return kept;
}
