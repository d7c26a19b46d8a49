import { type Palette, paletteOf } from '../../core/drawing/palette.ts';
import { northArrow } from '../../core/drawing/signs/northArrow.ts';
import { drawScaleBar, longestBar } from '../../core/drawing/signs/scaleBar.ts';
import { propertyOf } from '../../core/model/project.ts';
import { workingPlane } from '../../core/shapes/workingPlane.ts';
import { plainWords } from '../../core/words/figures.ts';
import { paintItems } from './canvas/paintItems.ts';
import type { Ctx } from './canvas/shapes.ts';
import type { MapInput } from './mapTypes.ts';
import { signPen } from './plane/screenPen.ts';
import type { View } from './plane/view.ts';
import { buildScene } from './scene/buildScene.ts';
import { lookOf } from './staticLayer/look.ts';
import { mapFont } from './staticLayer/mapFont.ts';
import { paintStatic } from './staticLayer/paintStatic.ts';
import { textWidthOn } from './staticLayer/textWidth.ts';

const marginPx = 60;
const footPx = 64;
/** Dots for each pixel of the drawing, so that it can be printed. */
const fineness = 2;
const workMs = 40;
/** Pixels for a millimetre of a sheet in the scale bar and the north arrow. */
const footUnitPx = 4;

/**
 * The whole drawing as a PNG picture, dark on light, with its name, date, scale bar and north, at most `mostPx` wide and
 * high. Maps and pictures underneath are left out. Null where nothing is drawn.
 */
export async function pictureOfProperty(input: MapInput, date: string, mostPx: number): Promise<Blob | null> {
  const { project, survey } = input;
  const scene = buildScene(project, survey, workingPlane(propertyOf(project)));
  if (!scene.extent) return null;
  const view = viewAround(scene.extent, mostPx / fineness);
  const canvas = document.createElement('canvas');
  canvas.width = view.widthPx * fineness;
  canvas.height = (view.heightPx + footPx) * fineness;
  const ctx = canvas.getContext('2d')!;
  ctx.scale(fineness, fineness);
  const palette = paletteOf('light');
  ctx.fillStyle = palette.paper;
  ctx.fillRect(0, 0, view.widthPx, view.heightPx + footPx);
  const plain: MapInput = { ...input, findings: [], chosen: [], pointed: null, lit: [], plan: null, theme: 'light' };
  await finish(paintStatic(ctx, lookOf(view, scene, plain, palette, textWidthOn(ctx))));
  paintStatusBar(ctx, view, plain, palette, date);
  return new Promise((resolve) => {
    canvas.toBlob(resolve, 'image/png');
  });
}

function viewAround([west, south, east, north]: readonly [number, number, number, number], mostPx: number): View {
  const widthM = Math.max(east - west, 20);
  const heightM = Math.max(north - south, 20);
  const pxPerM = Math.min((mostPx - 2 * marginPx) / widthM, (mostPx - 2 * marginPx - footPx) / heightM);
  const [widthPx, heightPx] = [widthM, heightM].map((lengthM) => Math.ceil(lengthM * pxPerM + 2 * marginPx));
  return {
    westM: (west + east) / 2 - widthPx! / 2 / pxPerM,
    northM: (south + north) / 2 + heightPx! / 2 / pxPerM,
    pxPerM,
    widthPx: widthPx!,
    heightPx: heightPx!,
  };
}

/** In portions, so that the window goes on answering. */
async function finish(job: Generator<void>): Promise<void> {
  let until = performance.now() + workMs;
  while (!job.next().done) {
    if (performance.now() < until) continue;
    await new Promise((resolve) => setTimeout(resolve, 0));
    until = performance.now() + workMs;
  }
}

function paintStatusBar(
  ctx: CanvasRenderingContext2D,
  view: View,
  { project, units }: MapInput,
  palette: Palette,
  date: string,
): void {
  const { name, invented } = propertyOf(project);
  const topPx = view.heightPx;
  ctx.fillStyle = palette.paper;
  ctx.fillRect(0, topPx, view.widthPx, footPx);
  ctx.fillStyle = palette.ink;
  ctx.strokeStyle = palette.ink;
  ctx.lineWidth = 1;
  ctx.strokeRect(0.5, 0.5, view.widthPx - 1, topPx - 1);
  ctx.textAlign = 'left';
  ctx.textBaseline = 'middle';
  ctx.font = mapFont(700);
  ctx.fillText(`${name}, ${date}`, 14, topPx + 20, view.widthPx / 2);
  ctx.font = mapFont();
  const words = plainWords().window.map.picture;
  ctx.fillText(invented ? words.inventedCaution : words.caution, 14, topPx + 44, view.widthPx * 0.6);
  paintScale(ctx, view, units, palette, topPx);
}

function paintScale(ctx: Ctx, view: View, units: MapInput['units'], palette: Palette, topPx: number): void {
  const pen = { ...signPen(1, palette), unit: footUnitPx };
  const bar = longestBar(view.pxPerM, units, view.widthPx / 5);
  const leftPx = view.widthPx - 70 - bar.length;
  paintItems(ctx, [
    ...drawScaleBar(bar, [leftPx, topPx + 34], pen),
    ...northArrow([view.widthPx - 26, topPx + footPx - 8], pen),
  ]);
}
