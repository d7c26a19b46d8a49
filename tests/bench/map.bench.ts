import { mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { Xy } from '../../core/geometry/types.ts';
import { allThings, type Project, remove } from '../../core/model/project.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import type { Survey } from '../../core/survey/types.ts';
import { buildIfNeeded } from '../../electron/start/buildApp.ts';
import { createProjectFile } from '../../electron/store/projectFile.ts';
import { buildScene } from '../../renderer/map/scene/buildScene.ts';
import { AppHost } from '../support/appHost.ts';
import { largeProperty } from '../support/largeProperty.ts';
import { frameTimes } from './frames.ts';
import { summary } from './measure.ts';
import { startChromium, viewport } from './page.ts';
import type { BenchRow } from './row.ts';

/** Makes about 20,000 runs when all but `gatewayCount` gateways are taken away. */
const runs = 25_400;
const gatewayCount = 3000;
const turnCount = 3;
/** 30 frames a second. */
const budgetMs = 1000 / 30;

/**
 * The map of a very large property under the hand, in a Chromium that draws without a graphics card. Beside it Leaflet
 * as it comes, with a layer for each run and each gateway on its canvas renderer.
 */
export async function bench(): Promise<BenchRow[]> {
  await buildIfNeeded();
  const project = withFewerGateways(largeProperty(runs));
  const survey = surveyOf(project);
  const size = survey.network.edges.filter(({ kind }) => kind === 'run').length;
  const home = mkdtempSync(join(tmpdir(), 'undergate-bench-'));
  createProjectFile(join(home, 'Large.undergate'), [...allThings(project)], 'Undergate bench');
  const host = await AppHost.start(home, [join(home, 'Large.undergate')]);
  const browser = await startChromium();
  try {
    const ours = await browser.newPage({ viewport });
    await ours.goto(await host.newAddress());
    await ours.locator('.leaflet-container').waitFor();
    // The first findings and plan are worked out beside the window meanwhile.
    await ours.waitForTimeout(15_000);
    const own = await gestures(ours);
    await ours.close();
    const plain = await browser.newPage({ viewport });
    await drawPlainly(plain, project, survey);
    const other = await gestures(plain);
    return Object.entries(own).flatMap(([name, turns]): BenchRow[] => [
      { name: `${name}, between two frames`, size, ...summary(turns.flat()), unit: 'ms', budget: budgetMs },
      {
        name: `${name}, longest stall`,
        size,
        ...summary(longest(turns)),
        unit: 'ms',
        budget: null,
        other: { name: 'one layer per feature', median: summary(longest(other[name]!)).median },
      },
    ]);
  } finally {
    await browser.close();
    await host.kill();
    rmSync(home, { recursive: true, force: true });
  }
}

function withFewerGateways(project: Project): Project {
  const gateways = [...project.gateway.values()];
  const surplus = gateways.filter((_, i) => (i * gatewayCount) % gateways.length >= gatewayCount);
  const ids = new Set(surplus.map(({ id }) => id));
  const crossings = [...project.crossing.values()].filter(({ gatewayId }) => ids.has(gatewayId));
  const switches = [...project.switch.values()].filter(
    ({ place }) => place.on === 'gateway' && ids.has(place.gatewayId),
  );
  return remove(project, ...surplus, ...crossings, ...switches);
}

const longest = (turns: readonly (readonly number[])[]): number[] => turns.map((times) => Math.max(...times));

/**
 * What a hand does, a few times over: drags the whole property to and fro, turns the wheel in and out, drags from near.
 * By gesture, the times between frames of each turn.
 */
async function gestures(page: Page): Promise<Record<string, number[][]>> {
  const box = (await page.locator('.leaflet-container').boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const whole = await turns(page, () => drag(page, x, y));
  const wheel = await turns(page, () => turnWheel(page, [-120, -120, -120, -120, 120, 120, 120, 120]));
  await turnWheel(page, [-120, -120, -120]);
  const near = await turns(page, () => drag(page, x, y));
  return { 'map panned, whole property': whole, 'map zoomed with the wheel': wheel, 'map panned, nearer': near };
}

async function turns(page: Page, gesture: () => Promise<void>): Promise<number[][]> {
  const times: number[][] = [];
  for (let turn = 0; turn < turnCount; turn++) times.push(await frameTimes(page, gesture));
  return times;
}

async function turnWheel(page: Page, deltas: readonly number[]): Promise<void> {
  for (const deltaY of deltas) {
    await page.mouse.wheel(0, deltaY);
    await page.waitForTimeout(350);
  }
}

async function drag(page: Page, x: number, y: number): Promise<void> {
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 180; step++) {
    const turn = (step / 60) * Math.PI;
    await page.mouse.move(x + 300 * Math.sin(turn), y + 180 * Math.sin(turn / 2));
    await page.waitForTimeout(8);
  }
  await page.mouse.up();
  // Until what the end of a drag sets off is on the screen.
  await page.waitForTimeout(700);
}

/** Draws the same property with Leaflet's own layers. */
async function drawPlainly(page: Page, project: Project, survey: Survey): Promise<void> {
  const { parts } = buildScene(project, survey, survey.plane);
  const paths = parts.flatMap((part) => (part.kind === 'piece' ? [part.xy] : []));
  const points = parts.flatMap((part) => (part.kind === 'gateway' ? [part.shape.centre] : []));
  const leaflet = createRequire(import.meta.url).resolve('leaflet/dist/leaflet.js');
  await page.setContent('<style>body { margin: 0 } #map { width: 100vw; height: 100vh }</style><div id="map"></div>');
  await page.addStyleTag({ path: leaflet.replace(/js$/, 'css') });
  await page.addScriptTag({ path: leaflet });
  await page.evaluate(addLayers, { paths, points });
  await page.waitForTimeout(3000);
}

/** Runs in the page. */
function addLayers({ paths, points }: { paths: readonly (readonly Xy[])[]; points: readonly Xy[] }): void {
  const { L } = window as unknown as { L: typeof import('leaflet') };
  const map = L.map('map', { crs: L.CRS.Simple, preferCanvas: true, minZoom: -8, zoomSnap: 0 });
  const toLatLng = ([x, y]: Xy) => L.latLng(y, x);
  const lines = L.featureGroup(paths.map((path) => L.polyline(path.map(toLatLng), { weight: 2 })));
  map.fitBounds(lines.getBounds());
  lines.addTo(map);
  for (const point of points) L.circleMarker(toLatLng(point), { radius: 4 }).addTo(map);
}
