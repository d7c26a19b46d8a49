import type { LocalPlane } from '../../geometry/localPlane.ts';
import type { Xy } from '../../geometry/types.ts';
import { keptForPair, keptWhile } from '../../model/memo.ts';
import type { Project } from '../../model/project.ts';
import { type PathPlace, placeAt, xyAt } from '../../shapes/measuredPath.ts';
import type { LineShape } from '../../shapes/types.ts';
import { type HeightModel, heightModelOf } from './heightModel.ts';

/** The lie of the ground under the fences, as far as the property has heights. */
export interface Heights {
  /** Whether there are any heights. */
  readonly known: boolean;
  /** Metres above the sea; null where it is not known. */
  readonly heightM: (xy: Xy) => number | null;
  /**
   * Length over the ground of a piece of a fence line, metres: what its wire has to span. Null where the height of any
   * part of it is not known; then the plan length stands.
   */
  readonly slopeLengthM: (lineId: string, fromM: number, toM: number) => number | null;
}

const unknownHeights: Heights = { known: false, heightM: () => null, slopeLengthM: () => null };

/** Mean radius of the earth (IUGG): how much longer a way is the higher it lies. */
const earthRadiusM = 6_371_008.8;

export function heightsOf(project: Project, plane: LocalPlane, lines: ReadonlyMap<string, LineShape>): Heights {
  const model = modelOf(project.ground, plane);
  if (!model) return unknownHeights;
  return {
    known: true,
    heightM: model.heightM,
    slopeLengthM: (lineId, fromM, toM) => {
      const shape = lines.get(lineId);
      return shape ? lengthBetween(profileOf(model, shape), fromM, toM) : null;
    },
  };
}

const modelOf = keptWhile((ground: Project['ground'], plane: LocalPlane): HeightModel | null =>
  heightModelOf(ground.values(), plane),
);

/** Along a fence line at stations near enough to each other: length over the ground so far, and places without height. */
interface Profile {
  readonly stationsM: readonly number[];
  readonly overGroundM: readonly number[];
  /** Stations up to and with this one whose height is not known. */
  readonly unknown: readonly number[];
}

const profileOf = keptForPair((model: HeightModel, shape: LineShape): Profile => measure(model, shape));

function measure({ heightM, stepM }: HeightModel, shape: LineShape): Profile {
  const stationsM = stationsAlong(shape.stationsM, stepM);
  const overGroundM: number[] = [];
  const unknown: number[] = [];
  let before: number | null = null;
  for (const [i, atM] of stationsM.entries()) {
    const height = heightM(xyAt(shape, atM));
    const planM = i === 0 ? 0 : atM - stationsM[i - 1]!;
    overGroundM.push((overGroundM[i - 1] ?? 0) + overGround(planM, before, height));
    unknown.push((unknown[i - 1] ?? 0) + (height === null ? 1 : 0));
    before = height;
  }
  return { stationsM, overGroundM, unknown };
}

/** Pythagoras, with the plan length as it is at that height. */
function overGround(planM: number, fromHeightM: number | null, toHeightM: number | null): number {
  if (fromHeightM === null || toHeightM === null) return planM;
  const levelM = planM * (1 + (fromHeightM + toHeightM) / 2 / earthRadiusM);
  return Math.hypot(levelM, toHeightM - fromHeightM);
}

/** Every vertex, and between them places at most a step apart. */
function stationsAlong(vertexStationsM: readonly number[], stepM: number): number[] {
  const stations = [0];
  for (let i = 1; i < vertexStationsM.length; i++) {
    const [fromM, toM] = [vertexStationsM[i - 1]!, vertexStationsM[i]!];
    const pieces = Math.max(1, Math.ceil((toM - fromM) / stepM));
    for (let piece = 1; piece < pieces; piece++) stations.push(fromM + ((toM - fromM) * piece) / pieces);
    stations.push(toM);
  }
  return stations;
}

function lengthBetween({ stationsM, overGroundM, unknown }: Profile, fromM: number, toM: number): number | null {
  const [from, to] = [placeAt({ stationsM }, fromM), placeAt({ stationsM }, toM)];
  // A place on a station needs the height there alone.
  const first = from.fraction === 1 ? from.segment + 1 : from.segment;
  const last = to.fraction === 0 ? to.segment : to.segment + 1;
  if (unknown[last]! - (first === 0 ? 0 : unknown[first - 1]!) > 0) return null;
  const lengthAt = ({ segment, fraction }: PathPlace) =>
    overGroundM[segment]! + fraction * (overGroundM[segment + 1]! - overGroundM[segment]!);
  return lengthAt(to) - lengthAt(from);
}
