import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { calls, type Half } from '../../../core/api/calls.ts';
import { channelOf } from '../../../core/api/wire.ts';
import { noDesktop } from '../../../electron/loopback/noDesktop.ts';
import { bindCalls } from '../../../electron/main/ipc.ts';
import { isPageAddress } from '../../../electron/main/pageScheme.ts';
import { refuseAllElse, refusePermissions } from '../../../electron/main/refusals.ts';
import { webPreferences } from '../../../electron/main/window.ts';
import { app, FakeWindow, forgetHandlers, session } from '../../support/fakeElectron.ts';
import { testService } from '../../support/hosts.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

vi.mock('electron', async () => import('../../support/fakeElectron.ts'));

const pageUrl = 'undergate://app/index.html';

function boundWindow(): FakeWindow {
  forgetHandlers();
  bindCalls(testService(temporaryFolder()), () => noDesktop);
  return new FakeWindow(pageUrl);
}

test('a call of the page itself is answered', async () => {
  const window = boundWindow();
  const answer = await window.ipcRenderer.invoke(channelOf('project', 'current'));
  expect(answer).toEqual({ ok: true, value: null });
});

test.each([
  ['a frame inside the page', { url: pageUrl }],
  ['no frame at all', null],
])('a call of %s is refused', async (_what, frame) => {
  const window = boundWindow();
  const answer = await window.invokeFrom(frame, channelOf('project', 'current'));
  expect(answer).toMatchObject({ ok: false, problem: { code: 'not-valid' } });
});

test.each([
  'https://evil.example/',
  'undergate://app.evil.example/',
  'undergate://evil/app',
  'file:///app',
  'about:blank',
])('a call of a page at %s is refused', async (url) => {
  boundWindow();
  const answer = await new FakeWindow(url).ipcRenderer.invoke(channelOf('project', 'openDemo'));
  expect(answer).toMatchObject({ ok: false, problem: { code: 'not-valid' } });
});

test('there is a handler for each call of the contract, and the message is checked', async () => {
  const window = boundWindow();
  for (const half of Object.keys(calls) as Half[]) {
    for (const call of Object.keys(calls[half])) {
      const answer = await window.ipcRenderer.invoke(channelOf(half, call), { nonsense: true });
      expect(answer, call).toMatchObject({ ok: false, problem: { code: 'not-valid' } });
    }
  }
});

test('only the address of the page is the address of the page', () => {
  expect(['undergate://app/', 'undergate://app/index.html#x'].map(isPageAddress)).toEqual([true, true]);
  const others = ['undergate://app:80/', 'undergate://application/', 'http://app/', 'undergate:app', 'nonsense', ''];
  expect(others.map(isPageAddress)).toEqual(others.map(() => false));
});

test('a window has no Node, its own world, and the sandbox', () => {
  expect(webPreferences).toEqual({
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    contextIsolation: true,
    sandbox: true,
    webSecurity: true,
    allowRunningInsecureContent: false,
    webviewTag: false,
    spellcheck: false,
    preload: expect.stringContaining(join('dist', 'electron', 'preload.cjs')) as string,
  });
});

test('navigation, new windows, embedded pages and permissions are refused', () => {
  refuseAllElse();
  refusePermissions();
  const { contents } = new FakeWindow(pageUrl);
  app.emit('web-contents-created', {}, contents);

  const isPrevented = (name: string, url: string) => {
    let prevented = false;
    const event = {
      url,
      preventDefault: () => {
        prevented = true;
      },
    };
    contents.emit(name, event);
    return prevented;
  };
  for (const name of ['will-navigate', 'will-frame-navigate', 'will-redirect', 'will-attach-webview']) {
    expect(isPrevented(name, 'https://evil.example/'), name).toBe(true);
  }
  expect(isPrevented('will-navigate', pageUrl)).toBe(false);
  expect(contents.windowOpenAnswer()).toEqual({ action: 'deny' });
  expect(session.permissions()).toEqual({ request: false, check: false, device: false });
});
