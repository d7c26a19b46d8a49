// Opens the app: in an Electron window where Electron's runtime is or can be fetched, else in an installed browser over
// the loopback host. Arguments: a project file, or --demo.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { plainWords } from '../../core/words/figures.ts';
import { languageOf, setLanguage } from '../../core/words/language.ts';
import { readSettings, settingsPath } from '../host/settingsFile.ts';
import { userFolders } from '../host/userFolders.ts';
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

setLanguage(languageOf(readSettings(settingsPath(userFolders())).language));
const said = plainWords().host.start;

await buildIfNeeded();
const whyNotDesktop = await openDesktop();
if (whyNotDesktop) {
  console.log(said.noDesktop[whyNotDesktop]);
  await openInBrowser();
}

/** Runs the desktop window until it is closed; answers why it could not, or null. */
async function openDesktop(): Promise<keyof typeof said.noDesktop | null> {
  if (!hasScreen) return 'noScreen';
  const electron = await provideElectron();
  if (!electron) return 'noRuntime';
  const startedAt = Date.now();
  const code = await new Promise<number | null>((resolve) => {
    const child = spawn(electron, [...(isRoot ? ['--no-sandbox'] : []), top, ...args], { stdio: 'inherit' });
    child.once('error', () => resolve(1));
    child.once('exit', resolve);
  });
  if (code !== 0 && Date.now() - startedAt < startingMs) return 'notStarting';
  process.exitCode = code ?? 1;
  return null;
}

async function openInBrowser(): Promise<void> {
  const { newAddress, stop } = await serve(args, writeAddress);
  const browser = hasScreen ? findBrowser() : null;
  if (browser) {
    const address = newAddress();
    console.log(said.inBrowser({ address: new URL(address).origin }));
    if (await openAsApp(browser, address)) return stop();
  }
  writeAddress(newAddress());
}

/** The address is good once and not for long, so that it may be read by who reads this terminal later. */
function writeAddress(address: string): void {
  console.log(said.at({ address }));
  console.log(said.openAddress);
}
