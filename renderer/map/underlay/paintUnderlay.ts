import { boxAround, boxesMeet } from '../../../core/geometry/box.ts';
import { type AffineCell, affineCells } from '../../../core/geometry/picture/affineCells.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import type { Ctx } from '../canvas/shapes.ts';
import { type View, viewBox } from '../plane/view.ts';
import type { Sheet, SheetTile } from './sheet.ts';
import type { TileCache } from './tileCache.ts';

/** Nowhere is a place drawn farther than this from where it belongs. */
const tolerancePx = 0.25;
/** Cells of one tile reach this far over their right and lower neighbours, so that no seam shows. */
const overlapPx = 0.7;

/**
 * Draws the sheets, the lowest first. Each is drawn by itself, its coarse tiles under its fine ones, and laid down as a whole, so that
 * neither seams nor tiles on top of each other show through where it is not opaque.
 */
export function* paintUnderlay(
  ctx: Ctx,
  view: View,
  sheets: readonly Sheet[],
  cache: TileCache,
  scratch: HTMLCanvasElement,
): Generator<void> {
  const ratio = window.devicePixelRatio || 1;
  const [width, height] = [Math.round(view.widthPx * ratio), Math.round(view.heightPx * ratio)];
  const look = { outline: outlineOf(view), screenPxPerM: view.pxPerM * ratio };
  const box = viewBox(view);
  for (const sheet of sheets) {
    const layer = cleared(scratch, width, height);
    let drawn = false;
    for (const { tile, wanted } of sheet.tilesFor(look)) {
      const image = wanted ? cache.get(tile) : cache.peek(tile.key);
      if (!image) continue;
      for (const cell of affineCells(tile.toXy, tile.extent, tolerancePx / look.screenPxPerM)) {
        if (!boxesMeet(cellBox(cell, tile), box)) continue;
        drawCell(layer, view, ratio, tile, cell, image);
        drawn = true;
      }
      yield;
    }
    if (!drawn) continue;
    ctx.globalAlpha = sheet.opacity;
    ctx.drawImage(scratch, 0, 0, view.widthPx, view.heightPx);
    ctx.globalAlpha = 1;
  }
}

function cleared(canvas: HTMLCanvasElement, width: number, height: number): Ctx {
  const ctx = canvas.getContext('2d')!;
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  } else ctx.reset();
  return ctx;
}

function outlineOf(view: View): Xy[] {
  const [west, south, east, north] = viewBox(view);
  const [midX, midY] = [(west + east) / 2, (south + north) / 2];
  return [
    [west, south],
    [midX, south],
    [east, south],
    [east, midY],
    [east, north],
    [midX, north],
    [west, north],
    [west, midY],
  ];
}

function cellBox({ x, y, width, height }: AffineCell, { toXy }: SheetTile) {
  return boxAround([toXy([x, y]), toXy([x + width, y]), toXy([x, y + height]), toXy([x + width, y + height])])!;
}

/** One cell by its affine map, counted from its own corner: canvases reckon with few digits. */
function drawCell(
  ctx: Ctx,
  view: View,
  ratio: number,
  { extent }: SheetTile,
  cell: AffineCell,
  image: ImageBitmap,
): void {
  const { a, b, c, d, e, f } = cell.map;
  const scale = view.pxPerM * ratio;
  const [left, top] = [a * cell.x + b * cell.y + c, d * cell.x + e * cell.y + f];
  ctx.setTransform(
    a * scale,
    -d * scale,
    b * scale,
    -e * scale,
    (left - view.westM) * scale,
    (view.northM - top) * scale,
  );
  const [perX, perY] = [image.width / extent[2], image.height / extent[3]];
  const [sourceX, sourceY] = [(cell.x - extent[0]) * perX, (cell.y - extent[1]) * perY];
  // Over the neighbours within the tile as far as there is something of it to show.
  const over = (length: number, screenPx: number, from: number, end: number) =>
    Math.min(length + overlapPx / screenPx, end - from);
  const width = over(cell.width, Math.hypot(a, d) * scale, cell.x, extent[0] + extent[2]);
  const height = over(cell.height, Math.hypot(b, e) * scale, cell.y, extent[1] + extent[3]);
  ctx.drawImage(image, sourceX, sourceY, width * perX, height * perY, 0, 0, width, height);
}
