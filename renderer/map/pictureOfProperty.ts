import { propertyOf } from '../../core/model/project.ts';
import { workingPlane } from '../../core/shapes/workingPlane.ts';
import type { MapInput } from './mapTypes.ts';
import { type Palette, paletteOf } from './palette.ts';
import type { View } from './plane/view.ts';
import { buildScene } from './scene/buildScene.ts';
import { lookOf } from './staticLayer/look.ts';
import { mapFont } from './staticLayer/mapFont.ts';
import { paintStatic } from './staticLayer/paintStatic.ts';
import { scaleBar } from './statusBar/scaleBar.ts';

const marginPx = 60;
const footPx = 64;
/** Dots for each pixel of the drawing, so that it can be printed. */
const fineness = 2;
const workMs = 40;

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
  await finish(paintStatic(lookOf(ctx, view, scene, plain, palette)));
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
  const about = 'For planning. Prove the fence dead before work; have buried services located before digging.';
  ctx.fillText(invented ? `An invented example. ${about}` : about, 14, topPx + 44, view.widthPx * 0.6);
  paintScale(ctx, view, units, topPx);
}

function paintScale(ctx: CanvasRenderingContext2D, view: View, units: MapInput['units'], topPx: number): void {
  const bar = scaleBar(view.pxPerM, units, view.widthPx / 5);
  const rightPx = view.widthPx - 60;
  ctx.lineWidth = 3;
  ctx.beginPath();
  ctx.moveTo(rightPx - bar.widthPx, topPx + 42);
  ctx.lineTo(rightPx, topPx + 42);
  ctx.stroke();
  ctx.font = mapFont();
  ctx.textAlign = 'center';
  ctx.fillText(bar.text, rightPx - bar.widthPx / 2, topPx + 24);
  // North: a plain arrow.
  ctx.beginPath();
  ctx.moveTo(view.widthPx - 28, topPx + 10);
  ctx.lineTo(view.widthPx - 20, topPx + 34);
  ctx.lineTo(view.widthPx - 36, topPx + 34);
  ctx.closePath();
  ctx.fill();
  ctx.fillText('N', view.widthPx - 28, topPx + 48);
}
