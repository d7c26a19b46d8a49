// Opens the app: in an Electron window where Electron's runtime is or can be fetched, else in an installed browser over
// the loopback host. Arguments: a project file, or --demo.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { serve } from '../loopback/serve.ts';
import { findBrowser, openAsApp } from './browser.ts';
import { buildIfNeeded } from './buildApp.ts';
import { provideElectron } from './electronRuntime.ts';

const top = join(import.meta.dirname, '..', '..');
const args = process.argv.slice(2);
const isRoot = process.getuid?.() === 0;
const hasScreen = process.platform !== 'linux' || Boolean(process.env.DISPLAY) || Boolean(process.env.WAYLAND_DISPLAY);

/** A window that ends so soon, and badly, did not start. */
const startingMs = 10_000;

await buildIfNeeded();
const whyNotDesktop = await openDesktop();
if (whyNotDesktop) {
  console.log(`No desktop window (${whyNotDesktop}): the app is served to a browser on this machine instead.`);
  await openInBrowser();
}

/** Runs the desktop window until it is closed; answers why it could not, or null. */
async function openDesktop(): Promise<string | null> {
  if (!hasScreen) return 'there is no screen';
  const electron = await provideElectron();
  if (!electron) return "Electron's runtime is not here and can't be fetched";
  const startedAt = Date.now();
  const code = await new Promise<number | null>((resolve) => {
    const child = spawn(electron, [...(isRoot ? ['--no-sandbox'] : []), top, ...args], { stdio: 'inherit' });
    child.once('error', () => resolve(1));
    child.once('exit', resolve);
  });
  if (code !== 0 && Date.now() - startedAt < startingMs) return "Electron's runtime does not start here";
  process.exitCode = code ?? 1;
  return null;
}

async function openInBrowser(): Promise<void> {
  const { newAddress, stop } = await serve(args, writeAddress);
  const browser = hasScreen ? findBrowser() : null;
  if (browser) {
    const address = newAddress();
    console.log(`Undergate is open in a browser, at ${new URL(address).origin}`);
    if (await openAsApp(browser, address)) return stop();
  }
  writeAddress(newAddress());
}

/** The address is good once and not for long, so that it may be read by who reads this terminal later. */
function writeAddress(address: string): void {
  console.log(`Undergate is at ${address}`);
  console.log(
    'Open that address in a browser on this machine within two minutes; it lets in once. Ctrl+C ends Undergate.',
  );
}
