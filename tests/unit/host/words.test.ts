import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, describe, expect, onTestFinished, test } from 'vitest';
import type { Problem, Result } from '../../../core/api/result.ts';
import { noWindowSettings } from '../../../core/api/windowSettings.ts';
import { english } from '../../../core/words/en.ts';
import { setLanguage } from '../../../core/words/language.ts';
import { pseudo } from '../../../core/words/pseudo.ts';
import { dispatch } from '../../../electron/host/dispatch.ts';
import type { ProjectService } from '../../../electron/host/projectService.ts';
import { settingsPath } from '../../../electron/host/settingsFile.ts';
import { noDesktop } from '../../../electron/loopback/noDesktop.ts';
import { startLoopback } from '../../../electron/loopback/server.ts';
import {
  damaged,
  keptBeside,
  moved,
  movedMeanwhile,
  noRoomToOpen,
  notKept,
  overwritten,
  overwrittenMeanwhile,
  problemOf,
  savedFromMemory,
} from '../../../electron/store/problems.ts';
import { lostInWords } from '../../../electron/store/salvage.ts';
import { testService } from '../../support/hosts.ts';
import { edit, gone, made, makeFile, makeStore, post, problemIn, startingThings } from '../../support/projectFile.ts';
import { englishIn } from '../../support/pseudo.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';
import { makeTileFile } from '../../support/tileFiles.ts';

/** A host whose user reads the pseudo-language. */
function strangeService(home: string): ProjectService {
  const path = settingsPath({ config: join(home, 'config') });
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, JSON.stringify({ ...noWindowSettings, language: 'en-XA' }));
  return testService(home);
}

afterEach(() => setLanguage(english));

/** Fails where a problem says a word that is not in the catalogue, these names left out. */
function expectSaid({ message, remedy }: Problem, names: readonly string[] = []): void {
  expect(englishIn(message, names), message).toBe('');
  expect(englishIn(remedy, names), remedy).toBe('');
}

function problemOfAnswer(answer: Result<unknown>): Problem {
  if (answer.ok) throw new Error('It went well.');
  return answer.problem;
}

describe('the host speaks the language of its settings', () => {
  test('in what it refuses', async () => {
    const home = temporaryFolder();
    const service = strangeService(home);
    const project = service.forWindow('w');
    const folder = join(home, 'maps');
    mkdirSync(folder);
    writeFileSync(join(folder, 'Notes.undergate'), 'no project');
    const answers = [
      await project.undo(),
      await project.open({ path: join(home, 'nowhere.undergate') }),
      await project.open({ path: folder }),
      await project.open({ path: join(folder, 'Notes.undergate') }),
      await project.open({ path: 'relative' }),
      await project.create({ path: join(home, 'no', 'folder', 'Farm'), name: 'Farm' }),
      await project.create({ path: `${join(home, 'x'.repeat(300))}`, name: 'Farm' }),
      await project.openTileFile({ path: '//server/map.mbtiles', chosen: true }),
      await project.openTileFile({ path: join(home, 'Notes.txt'), chosen: true }),
      await project.openTileFile({ path: join(home, 'Hills.mbtiles'), chosen: false }),
      await project.dropPicture({ imageId: 'none' }),
      await dispatch({ project, desktop: noDesktop }, 'project', 'noSuchCall', null),
      await dispatch({ project, desktop: noDesktop }, 'desktop', 'chooseOpenPath', undefined),
      await dispatch({ project, desktop: noDesktop }, 'project', 'open', { path: 'with\0zero' }),
    ];
    const problems = answers.flatMap((answer) => (answer.ok ? [] : [answer.problem]));
    expect(problems.length).toBe(answers.length - 1);
    for (const problem of problems) expectSaid(problem, ['path:']);
  });

  test('in the process that reads map files', async () => {
    const home = temporaryFolder();
    const service = strangeService(home);
    const project = service.forWindow('w');
    const path = makeTileFile(join(home, 'Hills.mbtiles'), { tiles: [], metadata: { name: 'Hills', format: 'png' } });
    expectSaid(problemOfAnswer(await project.openTileFile({ path, chosen: true })));
    writeFileSync(join(home, 'Text.mbtiles'), 'no map at all, but long enough to be looked at as one'.repeat(30));
    expectSaid(problemOfAnswer(await project.openTileFile({ path: join(home, 'Text.mbtiles'), chosen: true })));
    await project.create({ path: join(home, 'Farm'), name: 'Farm' });
    symlinkSync(path, join(home, 'projects-link.mbtiles'));
    expectSaid(
      problemOfAnswer(await project.openTileFile({ path: join(home, 'projects-link.mbtiles'), chosen: false })),
    );
  }, 30_000);

  test('to a page that it does not let in', async () => {
    const home = temporaryFolder();
    const host = await startLoopback({ service: strangeService(home), pageFolder: home });
    onTestFinished(() => host.close());
    const at = `http://127.0.0.1:${host.port}`;
    const token = { Authorization: `Bearer ${host.token}` };
    const asked: readonly [string, RequestInit][] = [
      ['/api/enter', { method: 'POST', body: 'nonsense' }],
      ['/api/enter', {}],
      ['/nothing', {}],
      ['/', { method: 'PUT' }],
      ['/api/project/open', { method: 'POST' }],
      ['/api/project/open', { headers: token }],
      ['/api/project/open', { method: 'POST', headers: token, body: '{}' }],
      ['/api/project/open', { method: 'POST', headers: { ...token, 'Content-Type': 'application/json' }, body: '{' }],
    ];
    for (const [path, init] of asked) {
      const answer = (await (await fetch(at + path, init)).json()) as Result<unknown>;
      expectSaid(problemOfAnswer(answer));
    }
  });
});

test('what is wrong with an open file is said in the language that is set', () => {
  const path = join(temporaryFolder(), 'Farm.undergate');
  const store = makeStore(path);
  setLanguage(pseudo());
  const [first] = startingThings;
  const asked = [
    problemIn(path, () => store.apply({ ...edit(store, 'Draw', [made(post('p'))]), baseRevision: 7 })),
    problemIn(path, () => store.apply(edit(store, 'Draw', [gone(post('not-there'))]))),
    problemIn(path, () => store.apply(edit(store, 'Draw', [gone(first!)]))),
    problemIn(path, () => makeFile(path)),
    ...[moved, overwritten, noRoomToOpen].map((make) => make(path).problem),
    ...[movedMeanwhile, overwrittenMeanwhile].map((make) => make(path, null).problem),
    damaged((words) => words.recordIn({ kind: 'post', id: 'p', path })).problem,
    keptBeside(path, path, lostInWords({ photos: 2, pictures: ['Hills'] })).problem,
    savedFromMemory(path, null).problem,
    notKept(path, problemOf({ code: 'ENOSPC' }, path).message).problem,
    problemOf(Object.assign(new Error('full'), { code: 'ENOSPC' }), path),
    problemOf(Object.assign(new Error('ro'), { code: 'EROFS' }), path),
    problemOf(Object.assign(new Error('long'), { code: 'ENAMETOOLONG' }), path),
  ];
  for (const problem of asked) expectSaid(problem);
});
