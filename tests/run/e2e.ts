// Runs the end-to-end tests in a real Chromium, which it gets where there is none; arguments go to Playwright.
import { buildIfNeeded } from '../../electron/start/buildApp.ts';
import { provideChromium } from './chromium.ts';
import { run } from './run.ts';

await buildIfNeeded();
provideChromium();
process.exitCode = await run('playwright', ['test', ...process.argv.slice(2)]);
