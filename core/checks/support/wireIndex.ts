import Flatbush from 'flatbush';
import { type Box, growBox } from '../../geometry/plane/box.ts';
import type { Xy } from '../../geometry/types.ts';
import type { Project } from '../../model/project.ts';
import type { FenceLine, LeadOut } from '../../model/things.ts';
import { isPlaceOnEarth } from '../../network/workingPlane.ts';
import type { LineShape, Survey } from '../../registers/types.ts';

/** Something live above ground: a fence line, or a lead-out that is not buried. */
export interface Wire {
  readonly thing: FenceLine | LeadOut;
  readonly xy: readonly Xy[];
  /** Of a fence line. */
  readonly shape: LineShape | null;
}

export interface WireSegment {
  readonly wire: Wire;
  readonly segment: number;
}

/** All live wires by place. */
export class WireIndex {
  readonly wires: readonly Wire[];
  readonly segments: readonly WireSegment[];
  readonly #tree: Flatbush | null;

  constructor(project: Project, survey: Survey) {
    const lines = [...survey.lines.values()].filter(({ line, xy }) => line.live && xy.length > 1);
    const leadOuts = [...project.leadOut.values()].filter(({ buried, path }) => !buried && path.every(isPlaceOnEarth));
    this.wires = [
      ...lines.map((shape): Wire => ({ thing: shape.line, xy: shape.xy, shape })),
      ...leadOuts.map((thing): Wire => ({ thing, xy: thing.path.map(survey.plane.toXy), shape: null })),
    ];
    this.segments = this.wires.flatMap((wire) =>
      Array.from({ length: wire.xy.length - 1 }, (_, segment): WireSegment => ({ wire, segment })),
    );
    this.#tree = this.segments.length > 0 ? new Flatbush(this.segments.length) : null;
    for (const { wire, segment } of this.segments) {
      const [ax, ay] = wire.xy[segment]!;
      const [bx, by] = wire.xy[segment + 1]!;
      this.#tree?.add(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
    }
    this.#tree?.finish();
  }

  /** Numbers in `segments` of those whose box comes within `reachM` of a box. */
  search(box: Box, reachM = 0): number[] {
    return this.#tree?.search(...growBox(box, reachM)) ?? [];
  }

  /** The wires that come near a path, each once. */
  nearPath(path: readonly Xy[], reachM: number): Wire[] {
    const near = new Set<Wire>();
    for (let i = 0; i < Math.max(1, path.length - 1); i++) {
      const [ax, ay] = path[i]!;
      const [bx, by] = path[i + 1] ?? path[i]!;
      const box: Box = [Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by)];
      for (const found of this.search(box, reachM)) near.add(this.segments[found]!.wire);
    }
    return [...near];
  }
}
