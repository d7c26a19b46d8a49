import { type Box, boxAround, growBox } from '../../geometry/box.ts';
import { type BoxTree, boxTree } from '../../geometry/boxTree.ts';
import type { Xy } from '../../geometry/types.ts';
import { keptFor } from '../../model/memo.ts';
import type { Project } from '../../model/project.ts';
import type { FenceLine, LeadOut } from '../../model/things.ts';
import { type MeasuredPath, measured } from '../../shapes/measuredPath.ts';
import type { LineShape } from '../../shapes/types.ts';
import { isPlaceOnEarth } from '../../shapes/workingPlane.ts';
import type { Survey } from '../../survey/types.ts';

/** Something live above ground: a fence line, or a lead-out that is not buried. */
export interface Wire {
  readonly thing: FenceLine | LeadOut;
  readonly path: MeasuredPath;
  readonly xy: readonly Xy[];
  /** Of a fence line. */
  readonly shape: LineShape | null;
}

/** The box around a path, worked out once. */
export const boxOf = keptFor((path: readonly Xy[]): Box => boxAround(path)!);

/** All live wires by place. */
export class WireIndex {
  readonly wires: readonly Wire[];
  readonly #tree: BoxTree;

  constructor(project: Project, survey: Survey) {
    const lines = [...survey.lines.values()].filter(({ line, xy }) => line.live && xy.length > 1);
    const leadOuts = [...project.leadOut.values()].filter(({ buried, path }) => !buried && path.every(isPlaceOnEarth));
    this.wires = [
      ...lines.map((shape): Wire => ({ thing: shape.line, path: shape, xy: shape.xy, shape })),
      ...leadOuts.map((thing): Wire => {
        const path = measured(survey.plane, thing.path);
        return { thing, path, xy: path.xy, shape: null };
      }),
    ];
    this.#tree = boxTree(this.wires.length, (add) => {
      for (const { xy } of this.wires) add(...boxOf(xy));
    });
  }

  /** Numbers in `wires` of those whose box comes within `reachM` of a box. */
  search(box: Box, reachM = 0): number[] {
    return this.#tree.search(growBox(box, reachM));
  }

  /** Pairs of different wires whose boxes come within `reachM` of each other, each pair once. */
  *pairs(reachM: number): Generator<readonly [Wire, Wire]> {
    for (const [i, wire] of this.wires.entries()) {
      for (const j of this.search(boxOf(wire.xy), reachM)) if (j > i) yield [wire, this.wires[j]!];
    }
  }

  /** The wires whose box comes within `reachM` of a path's segments, each once. */
  nearPath(path: readonly Xy[], reachM: number): Wire[] {
    const near = new Set<number>();
    for (let i = 0; i < Math.max(1, path.length - 1); i++) {
      const box = boxAround([path[i]!, path[i + 1] ?? path[i]!])!;
      for (const found of this.search(box, reachM)) near.add(found);
    }
    return [...near].sort((a, b) => a - b).map((found) => this.wires[found]!);
  }
}
