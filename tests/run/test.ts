// Runs all that must pass: format and rules, types, unit, contract and reference tests, the build, and the end-to-end
// tests in a real Chromium. Everything runs even when something before it failed; the last line says how it went.
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildIfNeeded } from '../../electron/start/buildApp.ts';
import { provideChromium } from './chromium.ts';
import { provideReaders } from './readers.ts';
import { run } from './run.ts';
import { playwrightTotals, type Totals, vitestTotals } from './totals.ts';

const results = join(import.meta.dirname, '..', '..', 'test-results');
const rooms = ['core', 'electron', 'renderer', 'tests', 'assets'];

let passed = 0;
let failed = 0;
const skipped: string[] = [];
const broken: string[] = [];

rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

await step('Format and rules (biome)', () => run('biome', ['ci', '.']));
await step('Rules of the rooms, rules with types (oxlint)', () => run('oxlint', ['--type-aware', '--deny-warnings']));
for (const room of rooms) await step(`Types of ${room} (tsc)`, () => run('tsc', ['-p', room]));
provideReaders();
await tests('Unit, component and contract tests', 'unit.json', vitestTotals, () =>
  vitest('unit.json', 'tests/unit', 'tests/components', 'tests/contract'),
);
await tests('Reference tests', 'reference.json', vitestTotals, () => vitest('reference.json', 'tests/reference'));
await tests('The first command on an ordinary machine (npm 10)', 'install.json', vitestTotals, () =>
  vitest('install.json', 'tests/install'),
);
await step('Build', async () => {
  await buildIfNeeded();
  return 0;
});
await tests('End-to-end tests', 'e2e.json', playwrightTotals, () => {
  provideChromium();
  return run('playwright', ['test']);
});

for (const reason of skipped) console.log(`Skipped: ${reason}`);
for (const name of broken) console.log(`Failed: ${name}`);
const totals = `${passed} passed, ${failed} failed`;
writeFileSync(join(results, 'totals.txt'), `${totals}\n`);
console.log(totals);
process.exitCode = failed > 0 ? 1 : 0;

/** One step without tests of its own: it counts only where it fails. */
async function step(name: string, work: () => Promise<number>): Promise<void> {
  console.log(`\n== ${name}`);
  if ((await codeOf(work)) === 0) return;
  failed += 1;
  broken.push(name);
}

/** One step that is many tests, counted from the report that it writes. */
async function tests(
  name: string,
  reportName: string,
  totalsOf: (path: string) => Totals,
  work: () => Promise<number>,
): Promise<void> {
  console.log(`\n== ${name}`);
  const code = await codeOf(work);
  const found = reported(() => totalsOf(join(results, reportName)));
  passed += found.passed;
  failed += code !== 0 && found.failed === 0 ? 1 : found.failed;
  skipped.push(...found.skipped);
  if (code !== 0 || found.failed > 0) broken.push(name);
}

async function codeOf(work: () => Promise<number>): Promise<number> {
  try {
    return await work();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return 1;
  }
}

function reported(read: () => Totals): Totals {
  try {
    return read();
  } catch {
    return { passed: 0, failed: 0, skipped: [] };
  }
}

function vitest(reportName: string, ...folders: string[]): Promise<number> {
  const report = `--outputFile.json=${join(results, reportName)}`;
  return run('vitest', ['run', '--reporter=default', '--reporter=json', report, ...folders]);
}
