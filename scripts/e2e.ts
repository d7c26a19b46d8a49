// Runs the end-to-end tests in a real Chromium, which it gets where there is none; arguments go to Playwright.
import { buildIfNeeded } from './parts/build.ts';
import { provideChromium } from './parts/chromium.ts';
import { run } from './parts/run.ts';

await buildIfNeeded();
provideChromium();
process.exitCode = await run('playwright', ['test', ...process.argv.slice(2)]);
