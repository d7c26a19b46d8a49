/** The pack as a PDF seen through readers that are not ours: poppler and zbar. Without them these tests are skipped, by name. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import { packParts } from '../../../core/api/packOptions.ts';
import { scaleBarFor } from '../../../core/drawing/signs/scaleBar.ts';
import { writeGeoJson } from '../../../core/exchange/geojson/writeGeoJson.ts';
import { projectOf } from '../../../core/model/project.ts';
import { crossingRegister } from '../../../core/record/crossingRegister.ts';
import { crossingTable } from '../../../core/sheets/crossingSchedulePages.ts';
import { cardPoints, middleOfTrench } from '../../../core/sheets/pack/cardPoints.ts';
import { pointTable, tieTable } from '../../../core/sheets/pack/crossingCardPages.ts';
import { geoUri } from '../../../core/sheets/pack/geoUri.ts';
import { switchTable } from '../../../core/sheets/switchRegisterPages.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { printJob } from '../../../electron/print/printJob.ts';
import { describeWith } from '../../support/describeWith.ts';

// Other programs do the work: on a busy machine they take their time.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const things = demoThings();
const project = projectOf(things);
const survey = surveyOf(project);
const crossings = crossingRegister(project, survey);
/** zbar complains of a bus that it does not need. */
const quiet: ['ignore', 'pipe', 'ignore'] = ['ignore', 'pipe', 'ignore'];
let folder: string;
let file: string;
let bytes: Uint8Array;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'pack-'));
  file = join(folder, 'pack.pdf');
  const made = await printJob(
    {
      what: 'pack',
      options: {
        parts: packParts,
        paper: 'A3',
        orientation: 'landscape',
        scaleDenominator: null,
        handoverNumber: null,
        preparedBy: '',
        preparedFor: '',
        note: '',
        date: '2031-05-02',
      },
    },
    things,
  );
  bytes = made.bytes;
  writeFileSync(file, bytes);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const wordsOf = (cell: unknown) =>
  typeof cell === 'string' ? cell.split(/[\s\u00a0]+/).filter((word) => word !== '') : [];

it('is far smaller than 15 MB, and says that it is PDF/A-3b', () => {
  expect(bytes.length).toBeLessThan(15e6);
  const raw = Buffer.from(bytes).toString('latin1');
  expect(raw).toContain('<pdfaid:part>3</pdfaid:part>');
  expect(raw).toContain('<pdfaid:conformance>B</pdfaid:conformance>');
  expect(raw).toContain('/AFRelationship /Data');
});

describeWith(['pdftotext', 'pdftoppm'], 'through poppler', () => {
  it('gives every word of the registers and cards', () => {
    const text = execFileSync('pdftotext', ['-enc', 'UTF-8', file, '-'], { encoding: 'utf8', maxBuffer: 1e8 });
    const words = new Set(text.normalize('NFC').split(/\s+/));
    const cards = crossings.flatMap(({ built }) => {
      const points = cardPoints(built, figures('metric'));
      return [
        pointTable(built, points, { project, survey, f: figures('metric') }),
        tieTable(points, figures('metric')),
      ];
    });
    for (const { rows } of [
      switchTable(survey, figures('metric'), true),
      crossingTable(project, survey, figures('metric'), true),
      ...cards,
    ]) {
      for (const word of rows.flat().flatMap(wordsOf)) expect(words).toContain(word);
    }
  });

  it('carries the property as GeoJSON', () => {
    execFileSync('pdfdetach', ['-saveall', '-o', folder, file]);
    expect(readFileSync(join(folder, 'property.geojson'), 'utf8')).toBe(writeGeoJson(project, survey));
  });

  it('draws the scale bars of its cards true within 0.2 %', () => {
    const dpi = 1200;
    const [first] = crossings;
    const page = pageTitled(`Crossing at ${first!.built.figures.gateway.name}`);
    // A strip through the bar at the foot of the plan, below its figures.
    const [x, y, w, h] = [33, 120.3, 48, 1].map((mm) => Math.round((mm / 25.4) * dpi)) as [
      number,
      number,
      number,
      number,
    ];
    const crop = ['-x', x, '-y', y, '-W', w, '-H', h].map(String);
    const out = join(folder, 'bar');
    execFileSync('pdftoppm', ['-r', String(dpi), '-gray', '-f', page, '-l', page, ...crop, '-singlefile', file, out]);
    const measuredMm = (widestInk(readFileSync(`${out}.pgm`)) / dpi) * 25.4;
    const text = execFileSync('pdftotext', ['-f', page, '-l', page, file, '-'], { encoding: 'utf8' });
    const scale = Number(/^1:(\d+)$/m.exec(text)![1]);
    const { length: trueMm } = scaleBarFor(scale, 'metric', 45);
    expect(Math.abs(measuredMm / trueMm - 1)).toBeLessThan(0.002);
  });
});

describeWith(['pdftoppm', 'zbarimg'], 'through zbar', () => {
  it('reads every code on the rendered pages as the coordinate of its crossing', () => {
    const ofBuilt = crossings.filter(({ built }) => built.figures.crossing.status === 'built');
    const places = ofBuilt.map(({ built }) => geoUri(survey.plane.toLonLat(middleOfTrench(built))));
    const from = pageTitled('Gate tags to cut out');
    execFileSync('pdftoppm', ['-r', '300', '-gray', '-f', from, file, join(folder, 'tags')]);
    const pictures = readdirSync(folder)
      .filter((name) => name.startsWith('tags'))
      .map((name) => join(folder, name));
    const read = execFileSync('zbarimg', ['--quiet', '--raw', ...pictures], { encoding: 'utf8', stdio: quiet })
      .trim()
      .split('\n');
    expect(read.sort()).toEqual(places.sort());
  });
});

/** The number of the first page with this title at its head. */
function pageTitled(title: string): string {
  const pages = execFileSync('pdftotext', [file, '-'], { encoding: 'utf8', maxBuffer: 1e8 }).split('\f');
  return String(1 + pages.findIndex((page) => page.includes(`· ${title}\n`)));
}

/** Longest run of ink in a row of a grey picture (PGM, binary), pixels from the first dark one to the last. */
function widestInk(pgm: Buffer): number {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 64).toString('latin1'))!;
  const [width, height] = [Number(head[1]), Number(head[2])];
  const pixels = pgm.subarray(head[0].length);
  let widest = 0;
  for (let row = 0; row < height; row++) {
    const line = pixels.subarray(row * width, (row + 1) * width);
    const first = line.findIndex((grey) => grey < 128);
    if (first !== -1) widest = Math.max(widest, line.findLastIndex((grey) => grey < 128) - first + 1);
  }
  return widest;
}
