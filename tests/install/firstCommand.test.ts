import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { chmodSync, cpSync, existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { basename, delimiter, join } from 'node:path';
import { expect, test } from 'vitest';
import { makeFile } from '../support/projectFile.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

const top = join(import.meta.dirname, '..', '..');

/** The npm that Node 20 brings: it runs every install script it finds, and compiles whatever has a binding.gyp. */
const oldNpm = '10.8.2';

/** All that an ordinary machine has besides Node and npm: no compiler, no make, no Python. */
const ordinaryPrograms = [
  'sh',
  'env',
  'git',
  'uname',
  'basename',
  'dirname',
  'cat',
  'ls',
  'cp',
  'mv',
  'rm',
  'mkdir',
  'sed',
];

/** So long one step may take; none of them is expected to. */
const patienceMs = 5 * 60_000;

test('npm 10 installs without compiler or Python, and the app and the tools run on the project’s own Node', {
  timeout: 4 * patienceMs,
}, (context) => {
  if (process.platform === 'win32') return context.skip('the bare machine is made of links, which Windows may refuse');
  const machine = bareMachine();
  if (!machine) {
    if (process.env.CI) throw new Error(`npm ${oldNpm} could not be fetched from the registry.`);
    return context.skip(`npm ${oldNpm} could not be fetched: is there a registry within reach?`);
  }

  copyProject(machine.folder);
  succeeds(machine.npm('ci', '--prefer-offline'));
  const file = makeFile(join(machine.folder, 'Farm.undergate'));

  // The app's own code, with SQLite and PDF.
  succeeds(machine.npm('run', 'pack', '--', file, join(machine.folder, 'Pack.pdf')));
  expect(readFileSync(join(machine.folder, 'Pack.pdf'), 'latin1').slice(0, 5)).toBe('%PDF-');
  expect(succeeds(machine.npm('exec', '--', 'node', '--version')).trim()).toBe(`v${ownNodeVersion()}`);

  // A script that is only a tool, on a machine where no other ran before it.
  rmSync(join(machine.folder, 'node_modules', '.bin', 'node'));
  succeeds(machine.npm('run', 'format'));
  expect(existsSync(join(machine.folder, 'node_modules', '.bin', 'node'))).toBe(true);
  succeeds(machine.npm('exec', '--', 'vitest', 'run', 'tests/unit/store/orderViews.test.ts'));
});

/** The one version that the project asks for, on every system. */
function ownNodeVersion(): string {
  const { optionalDependencies } = JSON.parse(readFileSync(join(top, 'package.json'), 'utf8')) as {
    optionalDependencies: Readonly<Record<string, string>>;
  };
  const versions = new Set(Object.values(optionalDependencies));
  expect(versions.size).toBe(1);
  return [...versions][0]!;
}

interface Machine {
  readonly folder: string;
  /** Runs the old npm in the folder. */
  npm(...args: string[]): SpawnSyncReturns<string>;
}

/** A folder to install in, and an npm that finds only `ordinaryPrograms`; null where that npm can't be fetched. */
function bareMachine(): Machine | null {
  const place = temporaryFolder();
  const programs = join(place, 'bin');
  const folder = join(place, 'undergate');
  for (const made of [programs, folder]) mkdirSync(made);
  const fetched = spawnSync(
    'npm',
    ['install', '--prefix', place, '--no-save', '--prefer-offline', '--fetch-retries=1', `npm@${oldNpm}`],
    {
      cwd: place,
      env: environment(process.env.PATH),
      encoding: 'utf8',
      timeout: patienceMs,
    },
  );
  const npmFile = join(place, 'node_modules', 'npm', 'bin', 'npm-cli.js');
  if (fetched.status !== 0 || !existsSync(npmFile)) return null;
  for (const name of ordinaryPrograms) {
    const found = onPath(name);
    if (found) symlinkSync(found, join(programs, name));
  }
  symlinkSync(machinesNode(), join(programs, 'node'));
  writeFileSync(join(programs, 'npm'), `#!/bin/sh\nexec node "${npmFile}" "$@"\n`);
  chmodSync(join(programs, 'npm'), 0o755);
  return {
    folder,
    npm: (...args) =>
      spawnSync(join(programs, 'npm'), args, {
        cwd: folder,
        env: environment(programs),
        encoding: 'utf8',
        timeout: patienceMs,
      }),
  };
}

/** What a fresh clone holds, with what is not committed yet. */
function copyProject(folder: string): void {
  const notCloned = new Set(['.git', 'node_modules', 'dist', 'test-results', 'playwright-report', 'pictures']);
  cpSync(top, folder, { recursive: true, filter: (path) => !notCloned.has(basename(path)) });
}

/** This process's, without what npm and vitest themselves put there for what runs now. */
function environment(path: string | undefined): NodeJS.ProcessEnv {
  const kept = /^npm_config_(registry|cache|userconfig)$/i;
  const made = /^(npm_.*|INIT_CWD|NODE|NODE_ENV|NODE_OPTIONS|NODE_PATH|VITEST.*)$/i;
  const others = Object.entries(process.env).filter(([name]) => kept.test(name) || !made.test(name));
  return { ...Object.fromEntries(others), PATH: path };
}

/** The Node that is installed on this machine, rather than in the project; where there is no other, this one. */
function machinesNode(): string {
  const elsewhere = (process.env.PATH ?? '').split(delimiter).filter((folder) => !folder.includes('node_modules'));
  return elsewhere.map((folder) => join(folder, 'node')).find((path) => existsSync(path)) ?? process.execPath;
}

function onPath(name: string): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return folders.map((folder) => join(folder, name)).find((path) => existsSync(path));
}

/** Its output; throws with what it said where it failed. */
function succeeds({ status, stdout, stderr, error }: SpawnSyncReturns<string>): string {
  if (error) throw error;
  if (status !== 0) throw new Error(`It ended with ${status}: ${stdout}\n${stderr}`);
  return stdout;
}
