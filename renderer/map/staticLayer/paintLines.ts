import type { SectionMarks } from '../../../core/drawing/strokes/sectionPatterns.ts';
import { offsetPolyline } from '../../../core/geometry/polyline.ts';
import type { PiecePart } from '../scene/parts.ts';
import { disc } from '../signs/pen.ts';
import type { Look } from './look.ts';
import { marksAlong } from './marksAlong.ts';
import { pixelPath, tracePlanePath } from './pixelPath.ts';
import { sectionStyle } from './sectionStyle.ts';

/** Stretches of fence that are stroked in one go. Long paths stroke slowly, so a group is drawn in portions. */
const portion = 50;

const markSpacingPx = 30;

/** How a stretch of fence is drawn. */
type LineKind = 'plain' | 'dead' | 'planned' | 'built';

/** All fence lines: bands of the sections or the voltage below, the lines themselves, then the sections' marks. */
export function* paintLines(look: Look, pieces: readonly PiecePart[]): Generator<void> {
  yield* paintBands(look, pieces);
  const byKind = Map.groupBy(pieces, (piece) => lineKind(look, piece));
  for (const kind of ['plain', 'planned', 'built', 'dead'] as const) {
    const group = byKind.get(kind);
    if (group) yield* paintKind(look, kind, group);
  }
  if (look.input.voltage) yield* paintLowMarks(look, pieces);
  else if (look.showSections) yield* paintSectionMarks(look, pieces);
}

export function lineKind({ scene, input }: Look, { shape, edge }: PiecePart): LineKind {
  if (!shape.line.live || edge < 0) return 'plain';
  // Where voltages are shown the switches may stand in another way than they normally do.
  const dead = input.voltage ? input.voltage.along(edge, 0) === 0 : !scene.survey.reach.edgeFed[edge];
  if (scene.hasSource && dead) return 'dead';
  return shape.line.status;
}

function* paintKind(look: Look, kind: LineKind, pieces: readonly PiecePart[]): Generator<void> {
  const { ctx, palette, linePx } = look;
  if (kind === 'plain') {
    yield* stroke(look, pieces, palette.inkSoft, Math.max(1, linePx * 0.5));
    yield* paintPlainMarks(look, pieces);
  } else if (kind === 'dead') {
    ctx.lineCap = 'round';
    ctx.setLineDash([0.1, linePx * 2.2 + 1]);
    yield* stroke(look, pieces, palette.danger, linePx + 0.6);
    ctx.setLineDash([]);
    ctx.lineCap = 'butt';
  } else if (kind === 'built') {
    yield* stroke(look, pieces, palette.ink, linePx);
  } else if (linePx < 2) {
    yield* stroke(look, pieces, palette.ink, linePx * 0.6);
  } else {
    // Hollow: two thin rails with paper between.
    yield* stroke(look, pieces, palette.ink, linePx + 1.6);
    yield* stroke(look, pieces, palette.paper, linePx - 0.6);
  }
}

function* stroke(look: Look, pieces: readonly PiecePart[], colour: string, widthPx: number): Generator<void> {
  const { ctx, view } = look;
  ctx.strokeStyle = colour;
  ctx.lineWidth = widthPx;
  // On a thin line nobody sees the difference, and it is drawn in two thirds of the time.
  ctx.lineJoin = widthPx < 2 ? 'bevel' : 'round';
  for (let i = 0; i < pieces.length; i += portion) {
    ctx.beginPath();
    for (let j = i; j < Math.min(i + portion, pieces.length); j++) tracePlanePath(ctx, view, pieces[j]!.xy);
    ctx.stroke();
    yield;
  }
}

/** Small crosses: the sign of a fence without current. */
function* paintPlainMarks(look: Look, pieces: readonly PiecePart[]): Generator<void> {
  const { ctx, view, palette, signScale } = look;
  const r = 3.2 * signScale;
  for (const [i, piece] of pieces.entries()) {
    ctx.strokeStyle = palette.inkSoft;
    ctx.lineWidth = 1.2;
    ctx.beginPath();
    for (const { x, y } of marksAlong(pixelPath(view, piece.xy), 44)) {
      ctx.moveTo(x - r, y - r);
      ctx.lineTo(x + r, y + r);
      ctx.moveTo(x - r, y + r);
      ctx.lineTo(x + r, y - r);
    }
    ctx.stroke();
    if (i % portion === portion - 1) yield;
  }
}

function* paintBands(look: Look, pieces: readonly PiecePart[]): Generator<void> {
  const bandPx = look.linePx * 2.2 + 3;
  if (look.input.voltage) {
    const shades = Map.groupBy(pieces, (piece) => voltageShade(look, piece.edge));
    for (const [shade, group] of shades) {
      if (shade !== null) yield* stroke(look, group, look.palette.ramp[shade]!, bandPx);
    }
  } else if (look.showSections) {
    const { sectionOfEdge } = look.scene.survey;
    const sections = Map.groupBy(pieces, ({ edge }) => (edge < 0 ? -1 : (sectionOfEdge[edge] ?? -1)));
    for (const [section, group] of sections) {
      if (section >= 0) yield* stroke(look, group, sectionStyle(section).colour, bandPx);
    }
  }
}

/** Step of the voltage ramp for an edge's mean voltage, or null where it is not known. */
export function voltageShade({ input, palette }: Pick<Look, 'input' | 'palette'>, edge: number): number | null {
  const ends = edge < 0 ? null : (input.voltage?.ofEdge(edge) ?? null);
  if (!ends || !input.voltage) return null;
  const share = (ends[0] + ends[1]) / 2 / input.voltage.maxV;
  return Math.min(palette.ramp.length - 1, Math.max(0, Math.floor(share * palette.ramp.length)));
}

/** Crosses on what stays below the voltage that holds the stock. */
function* paintLowMarks(look: Look, pieces: readonly PiecePart[]): Generator<void> {
  const { voltage } = look.input;
  const { ctx, palette, linePx } = look;
  let done = 0;
  for (const piece of pieces) {
    const ends = piece.edge < 0 ? null : (voltage?.ofEdge(piece.edge) ?? null);
    if (!ends || !voltage || Math.min(...ends) >= voltage.minimumV) continue;
    ctx.strokeStyle = palette.danger;
    ctx.lineWidth = Math.max(1.4, linePx * 0.7);
    paintMarks(look, 'crosses', piece);
    if (++done % portion === 0) yield;
  }
}

function* paintSectionMarks(look: Look, pieces: readonly PiecePart[]): Generator<void> {
  const { sectionOfEdge } = look.scene.survey;
  const { ctx, palette, linePx } = look;
  let done = 0;
  for (const piece of pieces) {
    const section = piece.edge < 0 ? -1 : (sectionOfEdge[piece.edge] ?? -1);
    if (section < 0) continue;
    ctx.strokeStyle = palette.ink;
    ctx.fillStyle = palette.ink;
    ctx.lineWidth = Math.max(1, linePx * 0.6);
    paintMarks(look, sectionStyle(section).marks, piece);
    if (++done % portion === 0) yield;
  }
}

function paintMarks({ ctx, view, palette, linePx, signScale }: Look, marks: SectionMarks, piece: PiecePart): void {
  if (marks === 'plain') return;
  const path = pixelPath(view, piece.xy);
  if (marks === 'twin') {
    ctx.beginPath();
    for (const side of [-1, 1]) {
      for (const [i, [x, y]] of offsetPolyline(path, side * (linePx + 3)).entries()) {
        if (i === 0) ctx.moveTo(x, y);
        else ctx.lineTo(x, y);
      }
    }
    ctx.stroke();
    return;
  }
  const r = 6 * Math.max(0.6, signScale);
  for (const { x, y, angle } of marksAlong(path, markSpacingPx)) {
    const [cos, sin] = [Math.cos(angle) * r, Math.sin(angle) * r];
    ctx.beginPath();
    if (marks === 'ticks') bar(ctx, x, y, -sin, cos);
    else if (marks === 'slants') bar(ctx, x, y, cos * 0.7 - sin * 0.7, sin * 0.7 + cos * 0.7);
    else if (marks === 'crosses') {
      bar(ctx, x, y, cos * 0.7 - sin * 0.7, sin * 0.7 + cos * 0.7);
      bar(ctx, x, y, cos * 0.7 + sin * 0.7, sin * 0.7 - cos * 0.7);
    } else if (marks === 'squares') ctx.rect(x - r * 0.6, y - r * 0.6, r * 1.2, r * 1.2);
    else disc(ctx, x, y, r * 0.65);
    if (marks === 'rings') {
      ctx.fillStyle = palette.paper;
      ctx.fill();
    } else if (marks === 'dots' || marks === 'squares') {
      ctx.fillStyle = palette.ink;
      ctx.fill();
      continue;
    }
    ctx.stroke();
  }
}

function bar(ctx: CanvasRenderingContext2D, x: number, y: number, dx: number, dy: number): void {
  ctx.moveTo(x - dx, y - dy);
  ctx.lineTo(x + dx, y + dy);
}
