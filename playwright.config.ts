import { defineConfig } from '@playwright/test';
import { installedChromium } from './tests/run/chromium.ts';

const isRoot = process.getuid?.() === 0;
const chromium = installedChromium();

/** End-to-end tests: the built page on a loopback host of its own for each test, in a real Chromium. */
export default defineConfig({
  testDir: 'tests/e2e',
  outputDir: 'test-results/e2e',
  fullyParallel: true,
  workers: 2,
  timeout: 120_000,
  expect: { timeout: 30_000 },
  forbidOnly: Boolean(process.env.CI),
  reporter: [['list'], ['json', { outputFile: 'test-results/e2e.json' }]],
  use: {
    browserName: 'chromium',
    // Figures and dates as the tests expect them, whatever the machine's own.
    locale: 'en-GB',
    viewport: { width: 1440, height: 900 },
    trace: 'retain-on-failure',
    screenshot: 'only-on-failure',
    launchOptions: {
      ...(chromium ? { executablePath: chromium } : {}),
      args: [
        '--disable-gpu',
        '--disable-dev-shm-usage',
        '--disable-background-networking',
        ...(isRoot ? ['--no-sandbox'] : []),
      ],
    },
  },
});
