import type { LocalPlane } from '../geometry/localPlane.ts';
import { keptWhile } from '../model/memo.ts';
import type { Project } from '../model/project.ts';
import type { FenceLine, FenceType } from '../model/things.ts';
import { type MeasuredPath, measuredPath } from './measuredPath.ts';
import type { LineShape } from './types.ts';

const shapeOf = keptWhile((line: FenceLine, type: FenceType | null, measured: MeasuredPath): LineShape => {
  return { ...measured, line, type };
});

/** The shape of every fence line whose vertices are places on earth, by line id. A line drawn as before keeps its object. */
export function lineShapes(project: Project, plane: LocalPlane): Map<string, LineShape> {
  const shapes = new Map<string, LineShape>();
  for (const line of project.fenceLine.values()) {
    const measured = measuredPath(line.path, plane);
    if (measured) shapes.set(line.id, shapeOf(line, project.fenceType.get(line.typeId) ?? null, measured));
  }
  return shapes;
}
