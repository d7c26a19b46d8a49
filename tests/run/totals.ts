import { readFileSync } from 'node:fs';

/** How many tests ran well, failed, and were left out (each with its reason). */
export interface Totals {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: readonly string[];
}

interface VitestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[];
  }[];
}

interface PlaywrightSuite {
  readonly specs?: readonly {
    readonly title: string;
    readonly tests: readonly {
      readonly status: string;
      readonly annotations: readonly { readonly description?: string }[];
    }[];
  }[];
  readonly suites?: readonly PlaywrightSuite[];
}

interface PlaywrightReport extends PlaywrightSuite {
  readonly stats: { readonly expected: number; readonly unexpected: number; readonly flaky: number };
  readonly errors: readonly unknown[];
}

/** Vitest's JSON report; a file that could not even be loaded counts as one failure. */
export function vitestTotals(path: string): Totals {
  const report = read<VitestReport>(path);
  const unloaded = report.testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0);
  const left = report.testResults
    .flatMap((file) => file.assertionResults)
    .filter(({ status }) => status !== 'passed' && status !== 'failed');
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + unloaded.length,
    skipped: left.map(({ fullName }) => fullName),
  };
}

/** Playwright's JSON report; an error outside any test counts as one failure, and so does a test that needed luck. */
export function playwrightTotals(path: string): Totals {
  const report = read<PlaywrightReport>(path);
  const { expected, unexpected, flaky } = report.stats;
  return { passed: expected, failed: unexpected + flaky + report.errors.length, skipped: skippedIn(report) };
}

function skippedIn({ specs = [], suites = [] }: PlaywrightSuite): string[] {
  const own = specs.flatMap(({ title, tests }) =>
    tests
      .filter(({ status }) => status === 'skipped')
      .map(({ annotations }) => `${title}. ${annotations.map(({ description }) => description ?? '').join(' ')}`),
  );
  return [...own, ...suites.flatMap(skippedIn)];
}

function read<T>(path: string): T {
  return JSON.parse(readFileSync(path, 'utf8')) as T;
}
