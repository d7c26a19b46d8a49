import { spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';

const binFolder = join(import.meta.dirname, '..', '..', 'node_modules', '.bin');

/** Runs one of the installed tools (biome, vitest, ...) in this terminal; resolves to its exit code. */
export function run(tool: string, args: readonly string[]): Promise<number> {
  const isWindows = process.platform === 'win32';
  const program = join(binFolder, isWindows ? `${tool}.cmd` : tool);
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { stdio: 'inherit', shell: isWindows });
    child.once('error', reject);
    child.once('exit', (code) => resolve(code ?? 1));
  });
}

/** Whether the system has a program of this name that tells its version. */
export function hasProgram(name: string): boolean {
  return spawnSync(name, ['-v'], { stdio: 'ignore' }).error === undefined;
}
