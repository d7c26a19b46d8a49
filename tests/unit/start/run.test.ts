import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const run = join(import.meta.dirname, '..', '..', '..', 'electron', 'start', 'run.mjs');

function ranWith(code: string) {
  const program = join(temporaryFolder(), 'program.ts');
  writeFileSync(program, code);
  return spawnSync(process.execPath, [run, program, 'a', 'b c'], { encoding: 'utf8' });
}

test('a program is run with its arguments, and ends as it ends', () => {
  const { status, stdout } = ranWith('console.log(JSON.stringify(process.argv.slice(2))); process.exitCode = 3;');
  expect([status, JSON.parse(stdout)]).toEqual([3, ['a', 'b c']]);
});

test('where packages are missing it says so, and what to do', () => {
  const { status, stderr } = ranWith(`import 'vite-that-is-not-there';`);
  expect(status).toBe(1);
  expect(stderr.trim()).toBe(
    `Undergate's package vite-that-is-not-there is not in node_modules. Run "npm ci", and see that npm is not told to omit packages (NODE_ENV=production does that).`,
  );
});

test('a fault of the program itself is shown as it is', () => {
  const { status, stderr } = ranWith(`throw new Error('my own fault');`);
  expect(status).toBe(1);
  expect(stderr).toContain('Error: my own fault');
});
