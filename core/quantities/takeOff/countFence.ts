import { conductorById } from '../../electrical/conductors/conductorLibrary.ts';
import { propertyOf } from '../../model/project.ts';
import type { FenceType } from '../../model/things.ts';
import { figures } from '../../words/figures.ts';
import { formatLength, formatTape } from '../../words/numbers/write.ts';
import { measureOf, workMeasure } from '../measures.ts';
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

function countLine(input: TakeOffInput, { shape, stretches }: LinePosts, type: FenceType, tally: Tally): void {
  const { line } = shape;
  const { units } = propertyOf(input.project);
  const plainWires = type.plainWires ?? 0;
  const wires = type.liveWires + type.earthWires + plainWires;
  const liveWires = line.live ? type.liveWires : 0;
  const strains = stretches.flatMap((stretch) => strainsOf(input, line.id, stretch));
  const lengthM = strains.reduce((sum, strain) => sum + strain.lengthM, 0);
  const onSlope = strains.some(({ sloped }) => sloped) ? ' over the ground' : '';
  const tieOffsM = 2 * strains.length * input.settings.tieOffM;
  const said = (count: number, of = '') =>
    `${line.name}: ${count} x ${formatLength(lengthM, units)}${onSlope}${of}, and ${formatTape(tieOffsM, units)} each for tying off at ${2 * strains.length} ends`;
  const kinds = [
    { name: line.live ? 'live' : 'not live', count: type.liveWires, conductorId: type.wireId },
    { name: 'earth', count: type.earthWires, conductorId: type.plainWireId ?? type.wireId },
    { name: 'plain', count: plainWires, conductorId: type.plainWireId ?? type.wireId },
  ].filter(({ count }) => count > 0);
  for (const [conductorId, alike] of Map.groupBy(kinds, (kind) => kind.conductorId)) {
    const count = alike.reduce((sum, kind) => sum + kind.count, 0);
    const of = kinds.length > 1 ? ` (${alike.map((kind) => `${kind.count} ${kind.name}`).join(', ')})` : '';
    const wire = measureOf('wire', conductorId, conductorName(input, conductorId));
    tally.add(wire, [line.id], count * (lengthM + tieOffsM), said(count, of));
  }
  tally.add(measureOf('barbedWire'), [line.id], type.barbedWires * (lengthM + tieOffsM), said(type.barbedWires));

  const tighteners = strains.reduce(
    (sum, strain) => sum + Math.ceil(strain.lengthM / input.settings.tightenerEveryM),
    0,
  );
  tally.add(
    measureOf('tightener'),
    [line.id],
    wires * tighteners,
    `${line.name}: ${wires} wires, ${strains.length} strains`,
  );

  const bays = stretches.flatMap((stretch) => baysOf(stretch, type.postSpacingM));
  const between = bays.reduce((sum, count) => sum + count - 1, 0);
  const passed = stretches.flatMap(({ stations }) => stations.filter(({ tied }) => !tied)).length;
  const spacing = formatTape(type.postSpacingM, units);
  tally.add(
    measureOf('post'),
    [line.id],
    between,
    `${line.name}: ${bays.length} stretches between fixed posts, at most ${spacing} from post to post`,
  );
  const held = between + passed;
  const dropperCount = input.project.fenceMake.get(`make:${type.id}`)?.droppersPerBay ?? 0;
  const bayCount = bays.reduce((sum, count) => sum + count, 0);
  tally.add(
    measureOf('dropper'),
    [line.id],
    dropperCount * bayCount,
    `${line.name}: ${dropperCount} in each of ${bayCount} bays`,
  );
  tally.add(
    measureOf('insulator'),
    [line.id],
    liveWires * held,
    `${line.name}: ${liveWires} live wires at ${held} posts`,
  );
  const dead = wires - liveWires + type.barbedWires;
  tally.add(measureOf('staple'), [line.id], dead * held, `${line.name}: ${dead} wires at ${held} posts`);
  tally.add(
    workMeasure('fenceKm'),
    [line.id],
    lengthM / 1000,
    `${line.name}: ${formatLength(lengthM, units)}${onSlope}`,
  );
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

export function conductorName({ project }: TakeOffInput, conductorId: string): string {
  const name = conductorById(conductorId, [...project.conductor.values()])?.name;
  return name ? figures(propertyOf(project).units).say(name) : conductorId;
}
