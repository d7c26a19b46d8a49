import { message } from '../../words/message.ts';
import { type Project, putAll } from '../project.ts';
import { refTo } from '../refTo.ts';
import type { FenceLine, LeadOut, LonLat, Post } from '../things.ts';
import { whyNotVertex } from './deleteVertex.ts';
import { type Edit, firstRefusal, guarded, type Refusal, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { joins, touching, verticesAt } from './support/joins.ts';
import { pathIn, pointBetween, sameVertex } from './support/path.ts';
import { allCorners, relay } from './support/relay.ts';
import { whyNotPoint } from './support/whyNotPath.ts';

export interface MoveVertex {
  readonly lineId: string;
  readonly index: number;
  readonly to: LonLat;
  /** True: joined lines, lead-outs and posts stay where they are, and what was joined here comes apart. */
  readonly alone?: boolean;
  /** A line that stays where it is, whatever joins it. */
  readonly heldLineId?: string;
}

/**
 * Moves a vertex. What is joined to it comes along: the vertices of other lines, the lead-out and the posts at that
 * point. Lines that end on one of its two segments keep their share of that segment, and so on from line to line.
 */
export function moveVertex(wanted: MoveVertex): Edit {
  return guarded(whyNotMoveVertex(wanted), (project) => {
    const moves = new Moves(project, wanted.heldLineId ?? null);
    moves.move(wanted.lineId, wanted.index, wanted.to);
    if (!wanted.alone) moves.bringAlong();
    return moves.carriedOut();
  });
}

/** `notFound`, `noSuchVertex`, `outOfRange`, `tooFar`, `doubledVertex`. */
export function whyNotMoveVertex({ lineId, index, to }: MoveVertex): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'fenceLine', lineId),
      () => whyNotVertex(found(project, 'fenceLine', lineId), index),
      () => whyNotPoint(project, to),
      () => whyNotApart(project, found(project, 'fenceLine', lineId), index, to),
    );
}

function whyNotApart(project: Project, line: FenceLine, index: number, to: LonLat): Refusal | null {
  const { path } = line;
  const last = path.length - 1;
  const seam = pathIn(project, path).closed && (index === 0 || index === last);
  const neighbours = seam ? [path[1]!, path[last - 1]!] : [path[index - 1], path[index + 1]];
  if (!neighbours.some((neighbour) => neighbour && sameVertex(project, neighbour, to))) return null;
  return { code: 'doubledVertex', message: message('edits.corners.doubledThere', { line: refTo(line) }) };
}

/** The vertices that move, found one join after another; no vertex moves twice. */
class Moves {
  readonly #project: Project;
  readonly #heldLineId: string | null;
  readonly #moved = new Map<string, Map<number, LonLat>>();
  readonly #points: { readonly from: LonLat; readonly to: LonLat }[] = [];
  readonly #segmentsDone = new Set<string>();
  readonly #along: (LeadOut | Post)[] = [];

  constructor(project: Project, heldLineId: string | null) {
    this.#project = project;
    this.#heldLineId = heldLineId;
  }

  move(lineId: string, index: number, to: LonLat): void {
    const { path } = this.#line(lineId);
    const last = path.length - 1;
    const seam = pathIn(this.#project, path).closed && (index === 0 || index === last);
    const line = this.#moved.get(lineId) ?? new Map<number, LonLat>();
    this.#moved.set(lineId, line);
    for (const i of seam ? [0, last] : [index]) line.set(i, to);
    this.#points.push({ from: path[index]!, to });
  }

  bringAlong(): void {
    for (let done = 0; done < this.#points.length; ) {
      for (; done < this.#points.length; done++) this.#bringJoined(this.#points[done]!);
      this.#bringRiders();
    }
  }

  carriedOut(): Project {
    let project = this.#project;
    for (const [lineId, moved] of this.#moved) {
      const line = this.#line(lineId);
      const path = line.path.map((vertex, i) => moved.get(i) ?? vertex);
      project = relay(project, line, path, allCorners(path.length));
    }
    return putAll(project, this.#along);
  }

  #line(lineId: string): FenceLine {
    return found(this.#project, 'fenceLine', lineId);
  }

  #stays(lineId: string, index: number): boolean {
    return lineId === this.#heldLineId || (this.#moved.get(lineId)?.has(index) ?? false);
  }

  /** Everything at the place where a vertex was. */
  #bringJoined({ from, to }: { readonly from: LonLat; readonly to: LonLat }): void {
    for (const { lineId, index } of verticesAt(this.#project, from)) {
      if (!this.#stays(lineId, index)) this.move(lineId, index, to);
    }
    for (const post of this.#project.post.values()) {
      if (joins(this.#project, from, post.at)) this.#along.push({ ...post, at: to });
    }
    for (const leadOut of this.#project.leadOut.values()) {
      if (joins(this.#project, from, leadOut.path.at(-1)!)) this.#bringLeadOut(leadOut, to);
    }
  }

  #bringLeadOut(leadOut: LeadOut, to: LonLat): void {
    if (this.#along.some(({ id, kind }) => kind === 'leadOut' && id === leadOut.id)) return;
    this.#along.push({ ...leadOut, path: leadOut.path.with(-1, to) });
  }

  /** What ends on a segment that moved keeps its share of it. */
  #bringRiders(): void {
    for (const [lineId, moved] of [...this.#moved]) {
      const { path } = this.#line(lineId);
      for (let i = 0; i + 1 < path.length; i++) {
        const key = `${lineId} ${i}`;
        if ((!moved.has(i) && !moved.has(i + 1)) || this.#segmentsDone.has(key)) continue;
        this.#segmentsDone.add(key);
        const [a, b] = [path[i]!, path[i + 1]!];
        this.#bringRidersOf(a, b, moved.get(i) ?? a, moved.get(i + 1) ?? b);
      }
    }
  }

  #bringRidersOf(a: LonLat, b: LonLat, newA: LonLat, newB: LonLat): void {
    const shareOf = touching(this.#project, a, b);
    const target = (point: LonLat): LonLat | null => {
      if (joins(this.#project, a, point) || joins(this.#project, b, point)) return null;
      const share = shareOf(point);
      return share === null ? null : pointBetween(this.#project, newA, newB, share);
    };
    for (const other of this.#project.fenceLine.values()) {
      for (const [index, vertex] of other.path.entries()) {
        if (this.#stays(other.id, index)) continue;
        const to = target(vertex);
        if (to) this.move(other.id, index, to);
      }
    }
    for (const leadOut of this.#project.leadOut.values()) {
      const to = target(leadOut.path.at(-1)!);
      if (to) this.#bringLeadOut(leadOut, to);
    }
  }
}
