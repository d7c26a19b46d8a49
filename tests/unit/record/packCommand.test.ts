import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import { makeFile } from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const program = join(import.meta.dirname, '..', '..', '..', 'electron', 'start', 'pack.ts');
const pack = (...args: readonly string[]) => spawnSync(process.execPath, [program, ...args], { encoding: 'utf8' });

test('makes the pack of a project file without a window', () => {
  const folder = temporaryFolder();
  const out = join(folder, 'pack.pdf');
  const file = makeFile(join(folder, 'Demo.undergate'), demoThings());
  const { status, stdout, stderr } = pack(file, out, '--parts', 'crossings,tags', '--date', '2031-05-02');
  expect(stderr).toBe('');
  expect(status).toBe(0);
  expect(stdout).toContain('pack.pdf: ');
  expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-');
}, 30_000);

test.each([
  [['FOLDER/nowhere.undergate', 'FOLDER/pack.pdf'], 'is not there'],
  [['FOLDER/Small.undergate', 'FOLDER/nowhere/pack.pdf'], 'There is no folder'],
  [['FOLDER/Small.undergate', 'FOLDER/pack.pdf', '--parts', 'poster'], 'no part "poster"'],
  [['FOLDER/Small.undergate', 'FOLDER/pack.pdf', '--scale', 'abc'], '"abc" is no scale'],
  [['FOLDER/Small.undergate', 'FOLDER/pack.pdf', '--date', 'x'], '"x" is no date'],
  [['FOLDER/Small.undergate'], 'Usage'],
])(
  'says what is wrong with %s',
  (args, words) => {
    const folder = temporaryFolder();
    makeFile(join(folder, 'Small.undergate'));
    const { status, stderr } = pack(...args.map((arg) => arg.replace('FOLDER', folder)));
    expect(stderr).toContain(words);
    expect(status).toBe(1);
  },
  30_000,
);
