import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { importFeatures, usualChoices } from '../../core/exchange/intake/importFeatures.ts';
import { writeKml } from '../../core/exchange/kml/writeKml.ts';
import { readAny } from '../../core/exchange/readAny.ts';
import { newProperty, startingFenceTypes } from '../../core/model/defaults.ts';
import { difference } from '../../core/model/difference.ts';
import type { NewId } from '../../core/model/edits/support/edit.ts';
import { type Project, projectOf } from '../../core/model/project.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { createProjectFile, openProjectFile } from '../../electron/store/projectFile.ts';
import { inEnglish } from '../support/english.ts';
import { largeProperty } from '../support/largeProperty.ts';
import { randomNumbers } from '../support/random.ts';
import { measure } from './measure.ts';
import type { BenchRow } from './row.ts';

const vertices = 100_000;
const perLine = 200;

/** From the bytes of a file to the drawing on the disk and on the screen, as one import goes. */
export function bench(): BenchRow[] {
  const lines = tracks();
  const folder = mkdtempSync(join(tmpdir(), 'import-bench-'));
  const drawn = largeProperty(2000);
  const ours = bytesOf(writeKml(drawn, surveyOf(drawn)));
  const row = (name: string, size: number, work: () => unknown, budget: number | null): BenchRow => {
    return { name, size, ...measure(work, 5), unit: 'ms', budget };
  };
  let count = 0;
  try {
    return [
      row(
        'GeoJSON of 100,000 vertices: read, previewed, taken over, saved, surveyed',
        vertices,
        () => imported(geoJson(lines), join(folder, `${++count}.undergate`)),
        3000,
      ),
      row('GPX of 100,000 vertices read and previewed', vertices, readOnly('a.gpx', gpx(lines)), 3000),
      row('KML of 100,000 vertices read and previewed', vertices, readOnly('a.kml', kml(lines)), 3000),
      row(
        'KMZ of 100,000 vertices read and previewed',
        vertices,
        readOnly('a.kmz', zipSync({ 'doc.kml': kml(lines) })),
        3000,
      ),
      row('GPX of 100,000 vertices taken over, simplified to 2 m, ends moved', vertices, taking(gpx(lines)), 3000),
      row('a tangle of 5,000 points within 3 m taken over and surveyed', 5000, untangling(), 3000),
      row('GeoJSON of 150,000 points read, previewed and taken over', 150_000, pointsTaken(150_000), null),
      row('KML of our own, 2,000 runs, read and previewed', 2000, readOnly('ours.kml', ours), null),
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function imported(bytes: Uint8Array, path: string): void {
  const property = [newProperty('Fresh'), ...startingFenceTypes()];
  createProjectFile(path, property, 'bench');
  const { store, things } = openProjectFile(path);
  const before = projectOf(things);
  let told = 0;
  const read = readAny('lines.geojson', bytes, { progress: () => told++ });
  if (!read.ok || told === 0) throw new Error('The file was not read with progress.');
  const { project } = importFeatures(read.preview, { ...usualChoices, typeId: 'ft-2' }, before, countingIds());
  const { revision } = store.state();
  store.apply({ baseRevision: revision, label: 'Import', changes: difference(before, project) });
  surveyOf(project);
  store.close();
}

function taking(bytes: Uint8Array): () => Project {
  const read = readAny('lines.gpx', bytes);
  if (!read.ok) throw new Error(inEnglish(read.message));
  const project = projectOf([newProperty('Fresh'), ...startingFenceTypes()]);
  const as = new Map(read.preview.features.map(({ key }) => [key, 'fenceLine'] as const));
  const choices = { ...usualChoices, typeId: 'ft-2', simplifyM: 2, snapEndsM: 5, as };
  return () => importFeatures(read.preview, choices, project, countingIds()).project;
}

/** Where a receiver that lies still says that it is, as a line that is not told to be a track. */
function untangling(): () => void {
  const random = randomNumbers(3);
  const path = Array.from({ length: 5000 }, () => {
    const [turn, farDeg] = [2 * Math.PI * random(), (3 / 111_320) * Math.sqrt(random())];
    return [-31.5 + (farDeg * Math.cos(turn)) / Math.cos((42.25 / 180) * Math.PI), -42.25 + farDeg * Math.sin(turn)];
  });
  const take = takingFeatures([{ type: 'LineString', coordinates: path }]);
  return () => surveyOf(take());
}

function pointsTaken(count: number): () => void {
  return takingFeatures(
    Array.from({ length: count }, (_, i) => ({
      type: 'Point',
      coordinates: [-31.5 + (i % 400) * 1e-4, -42.25 + Math.floor(i / 400) * 1e-4],
    })),
  );
}

function takingFeatures(geometries: readonly object[]): () => Project {
  const features = geometries.map((geometry) => ({ type: 'Feature', properties: {}, geometry }));
  const bytes = bytesOf(JSON.stringify({ type: 'FeatureCollection', features }));
  const project = projectOf([newProperty('Fresh'), ...startingFenceTypes()]);
  return () => {
    const read = readAny('lines.geojson', bytes);
    if (!read.ok) throw new Error(inEnglish(read.message));
    return importFeatures(read.preview, { ...usualChoices, typeId: 'ft-2' }, project, countingIds()).project;
  };
}

function readOnly(name: string, bytes: Uint8Array): () => void {
  return () => {
    const read = readAny(name, bytes);
    if (!read.ok) throw new Error(inEnglish(read.message));
  };
}

function countingIds(): NewId {
  let count = 0;
  return (kind) => `${kind}-new-${++count}`;
}

type Position = readonly [lon: number, lat: number, heightM: number];

/** Lines of 200 vertices, as a receiver on a vehicle would write them. */
function tracks(): Position[][] {
  return Array.from({ length: vertices / perLine }, (_, line) =>
    Array.from({ length: perLine }, (_, i): Position => {
      return [-31.6 + 0.0004 * line, -42.3 + 0.0005 * i + 1e-5 * (i % 7), 12 + (i % 5)];
    }),
  );
}

function geoJson(lines: readonly Position[][]): Uint8Array {
  const features = lines.map((coordinates, line) => ({
    type: 'Feature',
    properties: { name: `Fence ${line}` },
    geometry: { type: 'LineString', coordinates },
  }));
  return bytesOf(JSON.stringify({ type: 'FeatureCollection', features }));
}

function gpx(lines: readonly Position[][]): Uint8Array {
  const point = ([lon, lat, heightM]: Position) => `<trkpt lat="${lat}" lon="${lon}"><ele>${heightM}</ele></trkpt>`;
  const track = (line: readonly Position[]) => `<trk><name>T</name><trkseg>${line.map(point).join('')}</trkseg></trk>`;
  return bytesOf(`<gpx version="1.1">${lines.map(track).join('')}</gpx>`);
}

function kml(lines: readonly Position[][]): Uint8Array {
  const placemark = (line: readonly Position[]) =>
    `<Placemark><LineString><coordinates>${line.map((place) => place.join(',')).join(' ')}</coordinates></LineString></Placemark>`;
  return bytesOf(`<kml><Document>${lines.map(placemark).join('')}</Document></kml>`);
}

function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
