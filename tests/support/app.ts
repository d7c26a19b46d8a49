import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base, expect, type Page } from '@playwright/test';
import type { OpenProject, ProjectApi } from '../../core/api/projectApi.ts';
import type { Result } from '../../core/api/result.ts';
import type { Thing } from '../../core/model/things.ts';
import { connectLoopback } from '../../renderer/client/loopback.ts';
import { AppHost } from './appHost.ts';

export { expect };

/** The app as a test uses it: a window on a host of its own, whose files lie in a fresh folder. */
export class App {
  readonly page: Page;
  /** The folder that stands for the user's home. */
  readonly home: string;
  #host: AppHost;

  constructor(page: Page, home: string, host: AppHost) {
    this.page = page;
    this.home = home;
    this.#host = host;
  }

  /** An address of the page, good once: for further windows. */
  newAddress(): Promise<string> {
    return this.#host.newAddress();
  }

  /** The host's calls, past the page: to prepare a file, or to see what is in it. */
  get project(): ProjectApi {
    return connectLoopback(this.#host).project;
  }

  /** Shows the page, as on starting the app, and waits until it takes keys: a map and an inspector, or the welcome. */
  async show(): Promise<void> {
    // From elsewhere, so that it is loaded anew even where it is shown already.
    await this.page.goto('about:blank');
    await this.page.goto(await this.newAddress());
    await this.page.getByRole('main').waitFor();
  }

  /** Makes a project file that holds `things` besides a new property's own, opens it and shows it. Answers its path. */
  async openNew(things: readonly Thing[] = [], name = 'Test property'): Promise<string> {
    const path = join(this.home, 'projects', `${name}.undergate`);
    const listed = await this.project.listFolder({ path: null });
    unwrap(listed);
    unwrap(await this.project.create({ path, name }));
    await this.addThings(things);
    await this.show();
    return path;
  }

  /** Puts `things` in the open file, in place of those with the same id. */
  async addThings(things: readonly Thing[]): Promise<void> {
    if (things.length === 0) return;
    const { things: present, state } = await this.file();
    const changes = things.map((after) => {
      const before = present.find(({ kind, id }) => kind === after.kind && id === after.id) ?? null;
      return { kind: after.kind, id: after.id, before, after };
    });
    unwrap(await this.project.apply({ baseRevision: state.revision, label: 'Prepare', changes }));
  }

  /** Opens a copy of the demo property and shows it. */
  async openDemo(): Promise<void> {
    unwrap(await this.project.openDemo());
    await this.show();
  }

  /** What is in the open file now. */
  async file(): Promise<OpenProject> {
    const file = unwrap(await this.project.current());
    if (!file) throw new Error('No project file is open.');
    return file;
  }

  /** Ends the host (as a power cut would, with `kill`), starts it again on the same folder and shows the page. */
  async restart(how: 'stop' | 'kill' = 'stop'): Promise<void> {
    await this.#host[how]();
    this.#host = await AppHost.start(this.home);
    await this.show();
  }

  async end(): Promise<void> {
    await this.#host.kill();
  }
}

/** Playwright's `test` with the app: `test('...', async ({ app }) => { await app.show(); ... })`. */
export const test = base.extend<{ app: App }>({
  app: async ({ page }, use) => {
    const home = await mkdtemp(join(tmpdir(), 'undergate-e2e-'));
    const app = new App(page, home, await AppHost.start(home));
    await use(app);
    await app.end();
    await rm(home, { recursive: true, force: true });
  },
});

function unwrap<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(`${result.problem.code}: ${result.problem.message}`);
}
