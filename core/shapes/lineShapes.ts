import type { LocalPlane } from '../geometry/localPlane.ts';
import type { Project } from '../model/project.ts';
import type { FenceLine } from '../model/things.ts';
import { pathGeometry } from './pathGeometry.ts';
import type { LineShape } from './types.ts';

const kept = new WeakMap<FenceLine, LineShape>();

/** The shape of every fence line whose vertices are places on earth, by line id. A line drawn as before keeps its object. */
export function lineShapes(project: Project, plane: LocalPlane): Map<string, LineShape> {
  const shapes = new Map<string, LineShape>();
  for (const line of project.fenceLine.values()) {
    const geometry = pathGeometry(line.path, plane);
    if (!geometry) continue;
    const type = project.fenceType.get(line.typeId) ?? null;
    let shape = kept.get(line);
    if (shape?.type !== type || shape.xy !== geometry.xy) {
      const { xy, stationsM, lengthM, closed } = geometry;
      shape = { line, type, xy, stationsM, lengthM, closed };
      kept.set(line, shape);
    }
    shapes.set(line.id, shape);
  }
  return shapes;
}
