import { seeThroughBands } from '../../../core/drawing/mayLie.ts';
import type { Ink } from '../../../core/drawing/palette.ts';
import { slicePolyline } from '../../../core/geometry/polyline.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import type { Survey } from '../../../core/survey/types.ts';
import { paintItems } from '../canvas/paintItems.ts';
import { disc } from '../canvas/shapes.ts';
import type { DigHit, DigMark, FaultSearchMark, FindOverlay, MayLie } from '../findTypes.ts';
import { toPx } from '../plane/view.ts';
import { mapFont } from '../staticLayer/mapFont.ts';
import { pixelPath, tracePlanePath } from '../staticLayer/pixelPath.ts';
import type { PaintTools } from '../tools/tool.ts';
import { drawTag } from './cues.ts';

/** What Find lays over the map: the dig and what lies near it, the crossing looked for, the walk to a fault. */
export function paintFind(tools: PaintTools, find: FindOverlay, survey: Survey): void {
  if (find.search) paintFaultSearch(tools, find.search, survey);
  if (find.sought) paintWays(tools, find.sought, tools.palette.halo);
  if (find.dig) paintDig(tools, find.dig, survey);
}

/** The ground where a thing may lie, never so narrow that it could be missed. */
function paintWays({ ctx, view }: PaintTools, { ways, inGround }: MayLie, ink: Ink): void {
  if (!inGround) return;
  const drawn = ways.map(({ path, withinM }) => ({
    path: pixelPath(view, path),
    within: Math.max(6, withinM * view.pxPerM),
  }));
  paintItems(ctx, seeThroughBands(drawn, ink));
}

function paintDig(tools: PaintTools, dig: DigMark, survey: Survey): void {
  const { ctx, view, palette } = tools;
  for (const hit of dig.hits) paintWays(tools, hit, palette.paddockTint);
  const path = dig.path.map(survey.plane.toXy);
  ctx.beginPath();
  if (path.length === 1) {
    const [x, y] = toPx(view, path[0]!);
    disc(ctx, x, y, Math.max(9, dig.errorM * view.pxPerM));
  } else {
    tracePlanePath(ctx, view, path);
    if (dig.shape === 'area') ctx.closePath();
  }
  for (const [colour, width] of [
    [palette.paper, 7],
    [palette.ink, 3.5],
  ] as const) {
    ctx.strokeStyle = colour;
    ctx.lineWidth = width;
    ctx.lineJoin = 'round';
    ctx.stroke();
  }
  if (path.length === 1) paintSpade(tools, path[0]!);
  for (const hit of dig.hits) paintHit(tools, hit);
}

/** A cross where the hole will be. */
function paintSpade({ ctx, view, palette }: PaintTools, at: Xy): void {
  const [x, y] = toPx(view, at);
  ctx.beginPath();
  ctx.moveTo(x - 7, y - 7);
  ctx.lineTo(x + 7, y + 7);
  ctx.moveTo(x - 7, y + 7);
  ctx.lineTo(x + 7, y - 7);
  ctx.strokeStyle = palette.ink;
  ctx.lineWidth = 2.5;
  ctx.stroke();
}

/** Its number; where it may lie in the dig, on a red ground with a sign before it; of what is only planned, in a dotted rim. */
function paintHit({ ctx, view, palette }: PaintTools, { nearest, number, overlap, inGround }: DigHit): void {
  const [x, y] = toPx(view, nearest);
  const words = overlap ? `✕ ${number}` : number;
  ctx.font = mapFont(700);
  const width = Math.max(24, ctx.measureText(words).width + 14);
  ctx.beginPath();
  ctx.roundRect(x - width / 2, y - 12, width, 24, 12);
  ctx.fillStyle = overlap ? palette.danger : palette.paper;
  ctx.fill();
  ctx.strokeStyle = overlap ? palette.paper : palette.ink;
  ctx.lineWidth = 2;
  ctx.setLineDash(inGround ? [] : [2, 3]);
  ctx.stroke();
  ctx.setLineDash([]);
  ctx.fillStyle = overlap ? palette.paper : palette.ink;
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  ctx.fillText(words, x, y + 1);
}

function paintFaultSearch(tools: PaintTools, search: FaultSearchMark, survey: Survey): void {
  const { ctx, view, palette } = tools;
  ctx.lineCap = 'round';
  ctx.lineJoin = 'round';
  ctx.beginPath();
  for (const edge of search.outOfQuestion) traceEdge(tools, survey, edge);
  ctx.strokeStyle = palette.paper;
  ctx.globalAlpha = 0.72;
  ctx.lineWidth = 9;
  ctx.stroke();
  ctx.globalAlpha = 1;
  ctx.beginPath();
  for (const edge of search.inQuestion) traceEdge(tools, survey, edge);
  ctx.strokeStyle = palette.halo;
  ctx.lineWidth = 13;
  ctx.stroke();
  for (const { xy, number } of search.suspects) drawTag(ctx, palette, toPx(view, xy), number, 'center');
  if (!search.next) return;
  const [x, y] = toPx(view, search.next.xy);
  disc(ctx, x, y, 20);
  ctx.strokeStyle = palette.paper;
  ctx.lineWidth = 7;
  ctx.stroke();
  ctx.strokeStyle = palette.accent;
  ctx.lineWidth = 4;
  ctx.stroke();
  drawTag(ctx, palette, [x + 28, y], search.next.text, 'left');
}

function traceEdge({ ctx, view }: PaintTools, { network, lines }: Survey, index: number): void {
  const edge = network.edges[index];
  if (!edge) return;
  const line = edge.kind === 'run' ? lines.get(edge.lineId) : undefined;
  const ends = [network.nodes[edge.from]!.xy, network.nodes[edge.to]!.xy];
  tracePlanePath(ctx, view, line && edge.kind === 'run' ? runPath(line.xy, edge.fromM, edge.toM) : ends);
}

function runPath(xy: readonly Xy[], fromM: number, toM: number): readonly Xy[] {
  return slicePolyline(xy, fromM, toM);
}
