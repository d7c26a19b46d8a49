import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { RecentFiles } from '../../../electron/host/recentFiles.ts';
import { userFolders } from '../../../electron/host/userFolders.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

test.each<[NodeJS.Platform, Record<string, string>, string]>([
  ['linux', {}, '/home/kim/.config/undergate'],
  ['linux', { XDG_CONFIG_HOME: '/data/config' }, '/data/config/undergate'],
  ['darwin', {}, '/home/kim/Library/Application Support/undergate'],
  ['win32', { APPDATA: '/roaming' }, '/roaming/undergate'],
])('on %s with %j the app keeps its own files in %s', (platform, environment, config) => {
  expect(userFolders(environment, platform, '/home/kim')).toEqual({ config, projects: '/home/kim/Undergate' });
});

test('UNDERGATE_HOME takes the place of both folders', () => {
  const folders = userFolders({ UNDERGATE_HOME: '/trial', XDG_CONFIG_HOME: '/data' }, 'linux', '/home/kim');
  expect(folders).toEqual({ config: '/trial/config', projects: '/trial/projects' });
});

test('the list of recent files keeps the newest twenty, each once', () => {
  const list = new RecentFiles(join(temporaryFolder(), 'new', 'recent.json'));
  for (let n = 0; n < 25; n++) list.add(`/farms/${n % 22}.undergate`, `2031-05-02T10:00:${n}Z`);
  const names = list.list().map(({ fileName }) => fileName);
  expect(names).toHaveLength(20);
  expect(names.slice(0, 4)).toEqual(['2', '1', '0', '21']);
});

test('a spoilt list begins anew', () => {
  const path = join(temporaryFolder(), 'recent.json');
  for (const spoilt of ['', '{', '[{"path":7}]', 'null']) {
    writeFileSync(path, spoilt);
    const list = new RecentFiles(path);
    expect(list.list()).toEqual([]);
    list.add('/farms/a.undergate', '2031-05-02T10:00:00Z');
    expect(JSON.parse(readFileSync(path, 'utf8'))).toHaveLength(1);
  }
});

test('a list that can not be written stops nothing', () => {
  const path = join(temporaryFolder(), 'recent.json');
  mkdirSync(path);
  const list = new RecentFiles(path);
  expect(() => list.add('/farms/a.undergate', '2031-05-02T10:00:00Z')).not.toThrow();
  expect(list.list()).toEqual([]);
});
