import { type Box, growBox } from '../geometry/box.ts';
import { type BoxTree, boxTree } from '../geometry/boxTree.ts';
import type { LocalPlane } from '../geometry/localPlane.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { Property } from '../model/things.ts';
import type { GatewaySpan } from '../shapes/gatewaySpan.ts';
import { placesNear } from '../shapes/touches.ts';
import { workingPlane } from '../shapes/workingPlane.ts';
import { Joints } from './joints.ts';
import type { LineChain } from './lineChain.ts';
import type { NetworkEdge, NetworkProblem, NetworkProblemCode } from './types.ts';

/** An edge between two points of the draft's joints. */
export type EdgeDraft = Writable<NetworkEdge>;

type Writable<T> = T extends unknown ? { -readonly [K in keyof T]: T[K] } : never;

/** A network in the making: its edges join points of `joints`, which are numbered as nodes at the end. */
export class NetworkDraft {
  readonly project: Project;
  readonly property: Property;
  readonly plane: LocalPlane;
  readonly toleranceM: number;
  readonly joints = new Joints();
  readonly edges: EdgeDraft[] = [];
  readonly problems: NetworkProblem[] = [];
  readonly chainOf = new Map<string, LineChain>();
  #chains: readonly LineChain[] = [];
  #tree: BoxTree | null = null;
  readonly #reported = new Set<string>();

  constructor(project: Project) {
    this.project = project;
    this.property = propertyOf(project);
    this.plane = workingPlane(this.property);
    const { snapToleranceM } = this.property;
    this.toleranceM = snapToleranceM > 0 && Number.isFinite(snapToleranceM) ? snapToleranceM : 0;
  }

  get chains(): readonly LineChain[] {
    return this.#chains;
  }

  /** The live lines; once they are laid, things can be asked to touch them. */
  layChains(chains: readonly LineChain[]): void {
    this.#chains = chains;
    for (const chain of chains) this.chainOf.set(chain.line.id, chain);
    this.#tree = boxTree(chains.length, (add) => {
      for (const { geometry } of chains) add(...geometry.box);
    });
  }

  /** Indices of the live lines whose box comes within the tolerance of this one. */
  chainsNear(box: Box): number[] {
    return this.#tree?.search(growBox(box, this.toleranceM)) ?? [];
  }

  /** Joints of all live lines within the tolerance of a point; the openings that it lies in go to `inOpening`. */
  jointsAt(point: Xy, key: string, inOpening?: (span: GatewaySpan) => void): number[] {
    const joints: number[] = [];
    for (const index of this.chainsNear([...point, ...point])) {
      const chain = this.#chains[index]!;
      for (const { stationM } of placesNear(chain.geometry, point, this.toleranceM)) {
        const stop = chain.touch(stationM, point, this.toleranceM, key);
        if ('gateway' in stop) inOpening?.(stop);
        else joints.push(stop.joint);
      }
    }
    return joints;
  }

  /** Names a problem, once for the same things. */
  report(
    code: NetworkProblemCode,
    thingIds: readonly string[],
    at: LonLat | null,
    lengthM: number | null = null,
  ): void {
    const key = [code, ...thingIds].join(' ');
    if (this.#reported.has(key)) return;
    this.#reported.add(key);
    this.problems.push({ code, thingIds, at, lengthM });
  }
}
