import type { Item, Stroke } from '../../../core/drawing/displayList.ts';
import { type Ink, sectionColour } from '../../../core/drawing/palette.ts';
import {
  deadCrosses,
  deadFenceStroke,
  drawMarks,
  fenceStrokes,
  sectionMarks,
} from '../../../core/drawing/strokes/fence.ts';
import { leastOf } from '../../../core/model/extremes.ts';
import type { Status } from '../../../core/model/things.ts';
import type { PiecePart } from '../scene/parts.ts';
import type { Look } from './look.ts';
import { pixelPath, pixelTraces } from './pixelPath.ts';

/** Stretches of fence that are stroked in one go. Long paths stroke slowly, so a group is drawn in portions. */
const portion = 50;

/** How a stretch of fence is drawn. */
type LineKind = 'plain' | 'unfed' | Status;

/** All fence lines: bands of the sections or the voltage below, the lines themselves, then the sections' marks. */
export function* drawLines(look: Look, pieces: readonly PiecePart[]): Generator<Item[]> {
  yield* drawBands(look, pieces);
  const byKind = Map.groupBy(pieces, (piece) => lineKind(look, piece));
  for (const kind of ['plain', 'planned', 'built', 'unfed'] as const) {
    const group = byKind.get(kind);
    if (group) yield* drawKind(look, kind, group);
  }
  if (look.input.voltage) yield* drawLowMarks(look, pieces);
  else if (look.showSections) yield* drawSectionMarks(look, pieces);
}

function lineKind({ scene, input }: Look, { shape, edge }: PiecePart): LineKind {
  if (!shape.line.live || edge < 0) return 'plain';
  // Where voltages are shown the switches may stand in another way than they normally do.
  const dead = input.voltage ? input.voltage.along(edge, 0) === 0 : !scene.survey.reach.edgeFed[edge];
  if (scene.hasSource && dead) return 'unfed';
  return shape.line.status;
}

function* drawKind(look: Look, kind: LineKind, pieces: readonly PiecePart[]): Generator<Item[]> {
  const { linePx, linePen } = look;
  if (kind === 'planned' || kind === 'built') {
    for (const stroke of fenceStrokes(kind, linePx, linePen)) yield* strokes(look, pieces, stroke);
    return;
  }
  for (const [status, group] of Map.groupBy(pieces, ({ shape }) => shape.line.status)) {
    yield* strokes(look, group, deadFenceStroke(kind, status, linePx, linePen));
  }
  for (let i = 0; i < pieces.length; i += portion) {
    yield deadCrosses(pathsOf(look, pieces.slice(i, i + portion)), kind, linePen);
  }
}

const pathsOf = ({ view }: Look, pieces: readonly PiecePart[]) => pieces.map(({ xy }) => pixelPath(view, xy));

function* strokes({ view }: Look, pieces: readonly PiecePart[], stroke: Stroke): Generator<Item[]> {
  for (let i = 0; i < pieces.length; i += portion) {
    yield [
      pixelTraces(
        view,
        pieces.slice(i, i + portion).map(({ xy }) => xy),
        stroke,
      ),
    ];
  }
}

function* drawBands(look: Look, pieces: readonly PiecePart[]): Generator<Item[]> {
  const width = look.linePx * 2.2 + 3;
  const band = (group: readonly PiecePart[], ink: Ink) => strokes(look, group, { width, ink });
  if (look.input.voltage) {
    const shades = Map.groupBy(pieces, (piece) => voltageShade(look, piece.edge));
    for (const [shade, group] of shades) {
      if (shade !== null) yield* band(group, look.palette.ramp[shade]!);
    }
  } else if (look.showSections) {
    for (const [section, group] of bySection(look, pieces)) yield* band(group, sectionColour(section));
  }
}

/** The live pieces by the index of their section. */
function bySection({ scene }: Look, pieces: readonly PiecePart[]): Map<number, PiecePart[]> {
  const { sectionOfEdge } = scene.survey;
  const sections = Map.groupBy(pieces, ({ edge }) => (edge < 0 ? -1 : (sectionOfEdge[edge] ?? -1)));
  sections.delete(-1);
  return sections;
}

/** Step of the voltage ramp for an edge's mean voltage, or null where it is not known. */
function voltageShade({ input, palette }: Pick<Look, 'input' | 'palette'>, edge: number): number | null {
  const ends = edge < 0 ? null : (input.voltage?.ofEdge(edge) ?? null);
  if (!ends || !input.voltage) return null;
  const share = (ends[0] + ends[1]) / 2 / input.voltage.maxV;
  return Math.min(palette.ramp.length - 1, Math.max(0, Math.floor(share * palette.ramp.length)));
}

/** Rings along the line on what stays below the voltage that holds the stock; crosses are for what is dead. */
function* drawLowMarks(look: Look, pieces: readonly PiecePart[]): Generator<Item[]> {
  const { voltage } = look.input;
  if (!voltage) return;
  const low = pieces.filter(({ edge }) => {
    const ends = edge < 0 ? null : voltage.ofEdge(edge);
    return ends !== null && ends[0] + ends[1] > 0 && leastOf(ends) < voltage.minimumV;
  });
  const pen = { ...look.linePen, inks: { ...look.palette, ink: look.palette.danger } };
  for (let i = 0; i < low.length; i += portion) {
    yield drawMarks(pathsOf(look, low.slice(i, i + portion)), look.linePx, 'rings', pen);
  }
}

function* drawSectionMarks(look: Look, pieces: readonly PiecePart[]): Generator<Item[]> {
  for (const [section, group] of bySection(look, pieces)) {
    const marks = sectionMarks(section);
    if (marks === 'plain') continue;
    for (let i = 0; i < group.length; i += portion) {
      yield drawMarks(pathsOf(look, group.slice(i, i + portion)), look.linePx, marks, look.linePen);
    }
  }
}
