import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { onTestFinished, vi } from 'vitest';
import type { PrintJob } from '../../core/api/printJob.ts';
import type { Host, MadeFile } from '../../core/api/projectApi.ts';
import type { Thing } from '../../core/model/things.ts';
import { ProjectService } from '../../electron/host/projectService.ts';
import { startLoopback } from '../../electron/loopback/server.ts';
import { connectLoopback } from '../../renderer/client/loopback.ts';
import { post, startingThings } from './projectFile.ts';
import { temporaryFolder } from './temporaryFolder.ts';

/** A host under test: its service on a fresh home, and windows on it. */
export interface TestHost {
  readonly home: string;
  openWindow(): Promise<Host>;
}

export const demoThings: readonly Thing[] = [...startingThings, post('demo-post')];

export function testService(home: string): ProjectService {
  const demoFile = join(home, 'demo.json');
  mkdirSync(home, { recursive: true });
  writeFileSync(demoFile, JSON.stringify(demoThings));
  const service = new ProjectService({
    folders: { config: join(home, 'config'), projects: join(home, 'projects') },
    demoFile,
    print: (job, things) => Promise.resolve(inPlainText(job, things)),
    madeWith: 'Undergate test',
  });
  onTestFinished(() => void service.dispose());
  return service;
}

/** Bytes of every value, so that a transport that spoils one is found out. */
function inPlainText({ what }: PrintJob, things: readonly Thing[]): MadeFile {
  const bytes = Uint8Array.from({ length: 256 + things.length }, (_, index) => index % 256);
  return { fileName: `${what}.pdf`, mediaType: 'application/pdf', bytes };
}

/** The loopback host over real HTTP, and the page's own client. */
export async function loopbackHost(): Promise<TestHost> {
  const home = temporaryFolder();
  const loopback = await startLoopback({ service: testService(home), pageFolder: home });
  onTestFinished(() => loopback.close());
  const address = { origin: `http://127.0.0.1:${loopback.port}`, token: loopback.token };
  return { home, openWindow: () => Promise.resolve(connectLoopback(address)) };
}

/** The desktop's IPC with its preload, over a stand-in for Electron; the test file must mock 'electron'. */
export async function ipcHost(): Promise<TestHost> {
  const { FakeWindow, forgetHandlers } = await import('./fakeElectron.ts');
  forgetHandlers();
  const home = temporaryFolder();
  const service = testService(home);
  const { bindCalls, bindEvents } = await import('../../electron/main/ipc.ts');
  const { desktopOf } = await import('../../electron/main/desktop.ts');
  bindCalls(service, (contents) => desktopOf(contents, home));
  return {
    home,
    async openWindow() {
      const window = new FakeWindow('undergate://app/index.html');
      bindEvents(service, window.contents);
      return preloadedInto(window);
    },
  };
}

/** What the preload gives to the page of this window, found as the page finds it. */
async function preloadedInto(window: { readonly ipcRenderer: object }): Promise<Host> {
  const exposed: Record<string, unknown> = {};
  vi.resetModules();
  vi.doMock('electron', () => ({
    ipcRenderer: window.ipcRenderer,
    contextBridge: {
      exposeInMainWorld: (name: string, api: unknown) => {
        exposed[name] = api;
      },
    } satisfies Pick<Electron.ContextBridge, 'exposeInMainWorld'>,
  }));
  await import('../../electron/preload/preload.ts');
  vi.doMock('electron', () => import('./fakeElectron.ts'));
  vi.stubGlobal('window', exposed);
  onTestFinished(() => {
    vi.unstubAllGlobals();
  });
  const { connect } = await import('../../renderer/client/connect.ts');
  return connect();
}
