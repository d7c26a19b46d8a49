import { spawn } from 'node:child_process';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { newFenceLine } from '../../core/model/defaults.ts';
import type { Post } from '../../core/model/things.ts';
import { expect, test } from '../support/app.ts';
import { withUnknown } from '../support/withUnknown.ts';

test('the page loads under its content policy, without a word on the console', async ({ app, page }) => {
  const words: string[] = [];
  page.on('console', (message) => words.push(message.text()));
  page.on('pageerror', (error) => words.push(error.message));
  await app.openNew();
  await expect(page).toHaveTitle(/Test property/);
  expect(words).toEqual([]);
});

test('neither ticket nor token is left in the address, and the page can be loaded anew', async ({ app, page }) => {
  await app.openNew();
  await expect(page).toHaveTitle(/Test property/);
  expect(new URL(page.url())).toMatchObject({ hash: '', search: '', pathname: '/' });
  await page.reload();
  await expect(page).toHaveTitle(/Test property/);
});

test('a file that holds more than this version knows is opened, says so once, and keeps it through undo and redo', async ({
  app,
  page,
}) => {
  const post = withUnknown<Post>({ kind: 'post', id: 'p', name: 'Corner', at: [0.001, 0], role: 'strainer', note: '' });
  await app.openNew([post]);
  const status = page.getByRole('status').filter({ hasText: 'does not know' });
  await expect(status).toHaveText('This file holds details that this version does not know. They are kept.');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(status).toHaveCount(0);
  await page.getByRole('button', { name: 'Redo' }).click();
  await expect.poll(async () => (await app.file()).things).toContainEqual(post);
});

test('without a browser, the address in the terminal lets in once; a new one is had from the page', async ({
  app,
  page,
  context,
}) => {
  const { DISPLAY: _, WAYLAND_DISPLAY: __, ...environment } = process.env;
  const started = spawn(process.execPath, [join(import.meta.dirname, '..', '..', 'electron', 'start', 'start.ts')], {
    env: { ...environment, UNDERGATE_HOME: app.home },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  try {
    let terminal = '';
    started.stdout.setEncoding('utf8').on('data', (text: string) => {
      terminal += text;
    });
    const addresses = () => terminal.match(/(?<=^Undergate is at ).*$/gm) ?? [];
    await expect.poll(addresses).toHaveLength(1);
    expect(terminal).toContain('No desktop window (there is no screen): the app is served to a browser');
    const [first] = addresses();
    await page.goto(first!);
    await expect(page.getByRole('heading', { name: 'Look at an example' })).toBeVisible();
    await page.reload();
    await expect(page.getByRole('heading', { name: 'Look at an example' })).toBeVisible();

    const other = await context.newPage();
    for (const [address, words] of [
      [first!, 'This address was used already'],
      [new URL(first!).origin, 'without the address that lets in'],
    ] as const) {
      await other.goto('about:blank');
      await other.goto(address);
      await expect(other.getByRole('alert')).toContainText(words);
    }
    const { violations } = await new AxeBuilder({ page: other }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await other.getByRole('button', { name: 'Write a new address' }).click();
    await expect(other.getByText('A new address now stands in the terminal')).toBeVisible();
    await expect.poll(addresses).toHaveLength(2);
    // Pasted over the address of the page that is there: only what follows the # changes.
    await other.goto(addresses()[1]!);
    await expect(other.getByRole('heading', { name: 'Look at an example' })).toBeVisible();
    const token = await other.evaluate(() => sessionStorage.getItem('undergate.token'));
    expect(token).toMatch(/^[\w-]{43}$/);
    expect(terminal).not.toContain(token);
  } finally {
    started.kill();
  }
});

test('what was saved is there after a power cut', async ({ app, page }) => {
  const line = newFenceLine({
    id: 'f1',
    name: 'Lane',
    typeId: 'ft-2',
    path: [
      [0, 0],
      [0.001, 0],
    ],
  });
  const path = await app.openNew([line]);
  await app.restart('kill');
  expect((await app.project.open({ path })).ok).toBe(true);
  expect((await app.file()).things).toContainEqual(line);
  await page.reload();
  await expect(page).toHaveTitle(/Test property/);
});
