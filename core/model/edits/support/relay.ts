import { type Project, put } from '../../project.ts';
import type { FenceLine } from '../../things.ts';
import { carryAlong, type Stretch } from './carryAlong.ts';
import { type Path, pathIn } from './path.ts';

/** A vertex of the old path and the vertex of the new path that is the same corner. */
export type SameCorner = readonly [oldIndex: number, newIndex: number];

/**
 * Gives a line another path and carries along what stands on it. `corners` pairs the vertices that stay the same
 * corners, in rising order; it begins with the old path's first vertex and ends with its last.
 */
export function relay(project: Project, line: FenceLine, path: Path, corners: readonly SameCorner[]): Project {
  const stretches = stretchesBetween(project, line.path, line.id, path, corners);
  const newIndex = new Map(corners);
  const vertexTo = (index: number) => {
    const to = newIndex.get(index);
    return to === undefined ? null : { lineId: line.id, index: to };
  };
  return carryAlong(put(project, { ...line, path }), { line, stretches, vertexTo });
}

/** The stretches between each pair of neighbouring corners. */
export function stretchesBetween(
  project: Project,
  oldPath: Path,
  lineId: string,
  newPath: Path,
  corners: readonly SameCorner[],
): Stretch[] {
  const oldM = pathIn(project, oldPath).stationsM;
  const newM = pathIn(project, newPath).stationsM;
  return corners.slice(1).map(([oldTo, newTo], i) => {
    const [oldFrom, newFrom] = corners[i]!;
    return { fromM: oldM[oldFrom]!, toM: oldM[oldTo]!, lineId, newFromM: newM[newFrom]!, newToM: newM[newTo]! };
  });
}

/** Every vertex is the same corner as before. */
export function allCorners(count: number): SameCorner[] {
  return Array.from({ length: count }, (_, i) => [i, i] as const);
}
