import { conductorById } from '../../electrical/conductors/conductorLibrary.ts';
import type { FenceType } from '../../model/things.ts';
import { type Message, message, type ValuesOf } from '../../words/message.ts';
import { measureOf, measureOfKind, workMeasure } from '../measures.ts';
import type { NotCounted } from '../types.ts';
import type { FencePosts, LinePosts, Station, Stretch } from './fencePosts.ts';
import { counts, type TakeOffInput } from './input.ts';
import type { Tally } from './tally.ts';

/** A wire's end at a post, or its passing: what insulators, clamps and stays are counted from. */
export interface FenceEnd {
  readonly line: LinePosts['shape'];
  readonly type: FenceType;
  readonly station: Station;
  readonly tied: boolean;
  /** To be counted: the line, or the gateway at whose post it ends, is. */
  readonly counted: boolean;
}

/** What each fence line takes along its length: wire, intermediate posts, droppers and what holds the wires to them. */
export function countFence(input: TakeOffInput, fence: FencePosts, tally: Tally): NotCounted[] {
  const notCounted: NotCounted[] = [];
  for (const line of fence.lines) {
    const { shape } = line;
    if (!counts(input, shape.line.status)) continue;
    if (shape.type) countLine(input, line, shape.type, tally);
    else notCounted.push({ code: 'noFenceType', thingId: shape.line.id, name: shape.line.name });
  }
  return notCounted;
}

type WireSort = ValuesOf<'order.pieces.wire'>['sorts'][number];
type WireKind = WireSort & { readonly conductorId: string };

function countLine(input: TakeOffInput, { shape, stretches }: LinePosts, type: FenceType, tally: Tally): void {
  const { line } = shape;
  const plainWires = type.plainWires ?? 0;
  const wires = type.liveWires + type.earthWires + plainWires;
  const liveWires = line.live ? type.liveWires : 0;
  const strains = stretches.flatMap((stretch) => strainsOf(input, line.id, stretch));
  const lengthM = strains.reduce((sum, strain) => sum + strain.lengthM, 0);
  const along = { line: line.name, lengthM, overGround: strains.some(({ sloped }) => sloped) };
  const tieOffsM = 2 * strains.length * input.settings.tieOffM;
  const said = (count: number, sorts: readonly WireSort[]) =>
    message('order.pieces.wire', { ...along, count, sorts, tieOffsM, ends: 2 * strains.length });
  const kinds = [
    { sort: line.live ? 'live' : 'notLive', count: type.liveWires, conductorId: type.wireId },
    { sort: 'earth', count: type.earthWires, conductorId: type.plainWireId ?? type.wireId },
    { sort: 'plain', count: plainWires, conductorId: type.plainWireId ?? type.wireId },
  ].filter(({ count }) => count > 0) as WireKind[];
  for (const [conductorId, alike] of Map.groupBy(kinds, (kind) => kind.conductorId)) {
    const count = alike.reduce((sum, kind) => sum + kind.count, 0);
    const sorts = kinds.length > 1 ? alike.map(({ sort, count: ofSort }) => ({ sort, count: ofSort })) : [];
    const wire = measureOfKind('wire', conductorId, conductorName(input, conductorId));
    tally.add(wire, [line.id], count * (lengthM + tieOffsM), said(count, sorts));
  }
  tally.add(measureOf('barbedWire'), [line.id], type.barbedWires * (lengthM + tieOffsM), said(type.barbedWires, []));

  const tighteners = strains.reduce(
    (sum, strain) => sum + Math.ceil(strain.lengthM / input.settings.tightenerEveryM),
    0,
  );
  tally.add(
    measureOf('tightener'),
    [line.id],
    wires * tighteners,
    message('order.pieces.tighteners', { line: line.name, count: wires, strains: strains.length }),
  );

  const bays = stretches.flatMap((stretch) => baysOf(stretch, type.postSpacingM));
  const between = bays.reduce((sum, count) => sum + count - 1, 0);
  const passed = stretches.flatMap(({ stations }) => stations.filter(({ tied }) => !tied)).length;
  tally.add(
    measureOf('post'),
    [line.id],
    between,
    message('order.pieces.posts', { line: line.name, stretches: bays.length, spacingM: type.postSpacingM }),
  );
  const held = between + passed;
  const each = input.project.fenceMake.get(`make:${type.id}`)?.droppersPerBay ?? 0;
  const bayCount = bays.reduce((sum, count) => sum + count, 0);
  tally.add(
    measureOf('dropper'),
    [line.id],
    each * bayCount,
    message('order.pieces.droppers', { line: line.name, each, bays: bayCount }),
  );
  tally.add(
    measureOf('insulator'),
    [line.id],
    liveWires * held,
    message('order.pieces.insulators', { line: line.name, count: liveWires, posts: held }),
  );
  const dead = wires - liveWires + type.barbedWires;
  tally.add(
    measureOf('staple'),
    [line.id],
    dead * held,
    message('order.pieces.staples', { line: line.name, count: dead, posts: held }),
  );
  tally.add(workMeasure('fenceKm'), [line.id], lengthM / 1000, message('order.pieces.fence', along));
}

interface Strain {
  readonly lengthM: number;
  readonly sloped: boolean;
}

/** The pieces of wire from one tied post to the next. */
function strainsOf({ survey }: TakeOffInput, lineId: string, { stations }: Stretch): Strain[] {
  const tied = stations.filter((station) => station.tied);
  return tied.slice(1).map(({ atM: toM }, i) => {
    const { atM: fromM } = tied[i]!;
    const overGroundM = survey.heights.slopeLengthM(lineId, fromM, toM);
    return { lengthM: overGroundM ?? toM - fromM, sloped: overGroundM !== null };
  });
}

/** For each stretch between two fixed posts: how many bays it is divided into, so that none is over the spacing. */
function baysOf({ stations }: Stretch, spacingM: number): number[] {
  return stations.slice(1).map(({ atM }, i) => Math.max(1, Math.ceil((atM - stations[i]!.atM) / spacingM - 1e-9)));
}

/** All wire ends and passings at fixed posts, by post. */
export function endsByPost(input: TakeOffInput, { lines }: FencePosts): Map<number, FenceEnd[]> {
  const ends = new Map<number, FenceEnd[]>();
  for (const { shape, stretches } of lines) {
    if (!shape.type) continue;
    for (const { stations } of stretches) {
      for (const [i, station] of stations.entries()) {
        const sides = station.tied ? Number(i > 0) + Number(i < stations.length - 1) : 1;
        const status = station.gateway?.status === 'planned' ? 'planned' : shape.line.status;
        const end = { line: shape, type: shape.type, station, tied: station.tied, counted: counts(input, status) };
        const list = ends.get(station.post) ?? [];
        for (let side = 0; side < sides; side++) list.push(end);
        ends.set(station.post, list);
      }
    }
  }
  return ends;
}

export function conductorName({ project }: TakeOffInput, conductorId: string): Message {
  const conductor = conductorById(conductorId, [...project.conductor.values()]);
  return conductor?.name ?? message('order.goods.asWritten', { text: conductorId });
}
