/** The same file seen through poppler, a reader that is not ours. Where poppler is not installed see `describeWith`. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { scaleBarFor } from '../../../core/drawing/signs/scaleBar.ts';
import { projectOf } from '../../../core/model/project.ts';
import { crossingTable } from '../../../core/sheets/crossingSchedulePages.ts';
import { switchTable } from '../../../core/sheets/switchRegisterPages.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { printJob } from '../../../electron/print/printJob.ts';
import { describeWith } from '../../support/describeWith.ts';
import { baseOptions, inventedThings } from '../sheets/inventedProperty.ts';

const things = inventedThings();
const scaleDenominator = 10_000;
const dpi = 1200;

describeWith(['pdftoppm', 'pdftotext'], 'the sheets through poppler (pdftoppm, pdftotext)', () => {
  let folder: string;
  let file: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'sheets-'));
    file = join(folder, 'sheets.pdf');
    writeFileSync(
      file,
      (await printJob({ what: 'sheets', options: { ...baseOptions, scaleDenominator } }, things)).bytes,
    );
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('render a scale bar that is true within 0.2 %', () => {
    // A strip through the bar, in the panel's top right corner; its figures stand above it.
    const [x, y, w, h] = [235, 19.6, 52, 0.8].map((mm) => Math.round((mm / 25.4) * dpi)) as [
      number,
      number,
      number,
      number,
    ];
    const crop = ['-x', x, '-y', y, '-W', w, '-H', h].map(String);
    execFileSync('pdftoppm', [
      '-r',
      String(dpi),
      '-gray',
      '-f',
      '1',
      '-l',
      '1',
      ...crop,
      '-singlefile',
      file,
      join(folder, 'bar'),
    ]);
    const measuredMm = (longestBar(readFileSync(join(folder, 'bar.pgm'))) / dpi) * 25.4;
    const { length: lengthMm } = scaleBarFor(scaleDenominator, 'metric', 40.5);
    expect(Math.abs(measuredMm / lengthMm - 1)).toBeLessThan(0.002);
  });

  it('give every word of the registers to whoever copies or searches', () => {
    const text = execFileSync('pdftotext', ['-enc', 'UTF-8', file, '-'], { encoding: 'utf8' }).normalize('NFC');
    const words = new Set(text.split(/\s+/));
    const project = projectOf(things);
    const survey = surveyOf(project);
    for (const { rows } of [
      switchTable(survey, figures('metric'), true),
      crossingTable(project, survey, figures('metric'), true),
    ]) {
      for (const word of rows.flat().flatMap((cell) => (typeof cell === 'string' ? cell.split(/[\s\u00a0]+/) : []))) {
        if (word !== '') expect(words).toContain(word);
      }
    }
    expect(text).toContain('Kōwhai Flat');
  });
});

/** Widest row of ink of a grey picture (PGM, binary), pixels from its first dark pixel to its last. */
function longestBar(pgm: Buffer): number {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 64).toString('latin1'))!;
  const [width, height] = [Number(head[1]), Number(head[2])];
  const pixels = pgm.subarray(head[0].length);
  let widest = 0;
  for (let row = 0; row < height; row++) {
    const line = pixels.subarray(row * width, (row + 1) * width);
    const first = line.findIndex((grey) => grey < 128);
    const last = line.findLastIndex((grey) => grey < 128);
    if (first !== -1) widest = Math.max(widest, last - first + 1);
  }
  return widest;
}
