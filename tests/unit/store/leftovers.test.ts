import { mkdirSync, readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeFile, openStore } from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const image = 'image-00000000-0000-4000-8000-000000000001';

function lay(folder: string, names: readonly string[], hoursAgo: number): void {
  const at = new Date(Date.now() - hoursAgo * 3_600_000);
  for (const name of names) {
    writeFileSync(join(folder, name), 'left');
    utimesSync(join(folder, name), at, at);
  }
}

test('what ended processes left beside a file goes when the file is opened; what is in use or not ours stays', () => {
  const folder = temporaryFolder();
  const path = makeFile(join(folder, 'Farm.undergate'));
  const gone = [
    '.Copy.undergate.4711.part',
    '.Copy.undergate.4711.part-journal',
    '.Farm.before-0002.undergate.4711.part-wal',
    `.Farm.undergate.${image}.picture.part`,
    `.Farm.undergate.${image}.picture.part-journal`,
  ];
  const beingMade = ['.New.undergate.4712.part', '.New.undergate.4712.part-journal'];
  const notOurs = ['Notes.part', '.film.part', 'Copy.undergate.4711.part', `.Other.undergate.${image}.picture.part`];
  lay(folder, [...gone, ...notOurs], 2);
  lay(folder, beingMade, 0);
  // A picture on its way into a file that we hold is nobody's, however new.
  lay(folder, [gone[3]!], 0);
  openStore(path).close();
  expect(readdirSync(folder).sort()).toEqual(['Farm.undergate', ...beingMade, ...notOurs].sort());
});

test('what can not be taken away does not stop the file', () => {
  const folder = temporaryFolder();
  const path = makeFile(join(folder, 'Farm.undergate'));
  const name = '.Copy.undergate.4711.part';
  mkdirSync(join(folder, name));
  lay(join(folder, name), ['something'], 2);
  const at = new Date(Date.now() - 8_000_000);
  utimesSync(join(folder, name), at, at);
  openStore(path).close();
  expect(readdirSync(folder)).toContain(name);
});
