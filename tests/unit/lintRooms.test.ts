import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../support/temporaryFolder.ts';

const top = join(import.meta.dirname, '..', '..');

/** What the linter, with the project's own rules, says of a file with this text in this folder. */
function lint(folder: string, text: string): { passes: boolean; words: string } {
  const elsewhere = temporaryFolder();
  for (const rules of ['.oxlintrc.json', 'tests/lint']) {
    cpSync(join(top, rules), join(elsewhere, rules), { recursive: true });
  }
  const path = join(elsewhere, folder, 'trial.ts');
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, `${text}\n`);
  const oxlint = join(top, 'node_modules', 'oxlint', 'bin', 'oxlint');
  const { status, stdout } = spawnSync(process.execPath, [oxlint, '-f', 'unix', folder], {
    cwd: elsewhere,
    encoding: 'utf8',
  });
  return { passes: status === 0, words: stdout };
}

const nodeFile = `import { readFileSync } from 'node:fs';\nexport const text = readFileSync('x', 'utf8');`;
const thing = '../model/things.ts';

test.each<[string, string, string]>([
  ['core/geometry', nodeFile, 'core/geometry may not import node:fs'],
  ['core/model', `import { useState } from 'react';\nexport const hook = useState;`, 'may not import react'],
  ['core/network', `export * from 'leaflet';`, 'may not import leaflet'],
  [
    'core/network',
    `export { distanceM } from '../geometry/geodesic.ts';`,
    'core/network may not import distanceM from core/geometry/geodesic.ts',
  ],
  ['core/network', `export { length } from '@turf/length';`, 'may not import @turf/length'],
  ['core/network', `export { solveVoltage } from '../electrical/solveVoltage.ts';`, 'may not import core/electrical/'],
  ['core/model', `export type { ProjectApi } from '../api/projectApi.ts';`, 'may not import core/api/projectApi.ts'],
  [
    'core/api',
    `export const store = import('../../electron/store/projectStore.ts');`,
    'may not import electron/store/',
  ],
  [
    'renderer/state',
    `import Sqlite from 'better-sqlite3';\nexport const make = Sqlite;`,
    'may not import better-sqlite3',
  ],
  ['renderer/state', nodeFile, 'may not import node:fs'],
  ['renderer/panels', `export { ipcRenderer } from 'electron';`, 'may not import electron'],
  ['renderer/panels', `export * from '../../electron/host/projectService.ts';`, 'may not import electron/host/'],
  ['renderer/panels', `export * from 'leaflet';`, 'may not import leaflet'],
  ['renderer/map', `export * from '../state/appState.ts';`, 'may not import renderer/state/appState.ts'],
  [
    'electron/host',
    `import Sqlite from 'better-sqlite3';\nexport const make = Sqlite;`,
    'may not import better-sqlite3',
  ],
  ['electron/store', `export { app } from 'electron';`, 'may not import electron'],
  ['electron/loopback', `export { ipcMain } from 'electron';`, 'may not import electron'],
  ['electron/preload', nodeFile, 'may not import node:fs'],
  [
    'renderer/panels',
    `export { put } from '../../core/model/project.ts';`,
    'may not import put from core/model/project.ts',
  ],
  [
    'renderer/map',
    `import { propertyOf, removeAll as less } from '../../core/model/project.ts';\nexport const both = [propertyOf, less];`,
    'may not import removeAll from core/model/project.ts',
  ],
  [
    'renderer/state',
    `import * as all from '../../core/model/project.ts';\nexport const edit = all.put;`,
    'may not import * from core/model/project.ts',
  ],
  ['core/sheets', `export { succeed } from '../api/result.ts';`, 'may import types only from core/api'],
])('in %s the linter stops %j', (folder, text, words) => {
  const result = lint(folder, text);
  expect(result.words).toContain(words);
  expect(result.passes).toBe(false);
});

test.each<[string, string]>([
  ['core/geometry', `export type { LonLat } from '${thing}';`],
  ['core/sheets', `export type { Result } from '../api/result.ts';`],
  ['electron/host', nodeFile],
  ['renderer/panels', `export * from '../state/appState.ts';`],
  ['renderer/map', `export * from 'leaflet';`],
  ['renderer/panels', `export { propertyOf } from '../../core/model/project.ts';`],
  ['core/checks', `export { put } from '../model/project.ts';`],
])('in %s the linter lets pass %j', (folder, text) => {
  expect(lint(folder, text)).toEqual({ passes: true, words: expect.anything() as string });
});

test.each([
  'Math.max(0, ...numbers)',
  'Math.min(...numbers)',
  'list.push(...numbers)',
  'list.push(1, ...(list ? numbers : []))',
  'list.unshift(...numbers)',
  'put(numbers, ...numbers)',
])('a list does not become the arguments of a call: %s', (call) => {
  const declared = 'const numbers: number[] = [];\nconst list: number[] = [];\nconst put = console.log;\n';
  const linted = lint('core/geometry', `${declared}export const made = () => ${call};\nput(list);`);
  expect(linted.words).toContain('A list of any length must not become the arguments of');
  expect(linted.passes).toBe(false);
});

test('a list that is written out may become arguments, and any list an array', () => {
  const text =
    'export const made = (list: number[]) => [Math.max(...[1, 2]), ...list, list.push(...(list[0] ? [1] : []))];';
  expect(lint('core/geometry', text)).toMatchObject({ passes: true });
});
