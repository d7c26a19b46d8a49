// Runs one of the project's TypeScript programs, on the project's own Node whichever Node npm found first:
// node electron/start/run.mjs electron/start/start.ts --demo
// Plain JavaScript, so that an older Node can still read it.
import { spawn } from 'node:child_process';
import { delimiter, dirname, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { ownNode, placeOwnNode, refuseOldNode } from './ownNode.mjs';

const own = ownNode();
if (own) placeOwnNode(own);

if (own && own.version !== process.versions.node) runOn(own.program);
else {
  refuseOldNode();
  const [, , program, ...args] = process.argv;
  process.argv = [process.argv[0], resolve(program), ...args];
  await import(pathToFileURL(resolve(program)).href);
}

/** Runs the same again on that Node and ends as it does. A key pressed in the terminal reaches both. */
function runOn(program) {
  process.env.PATH = `${dirname(program)}${delimiter}${process.env.PATH ?? ''}`;
  const child = spawn(program, [fileURLToPath(import.meta.url), ...process.argv.slice(2)], { stdio: 'inherit' });
  process.on('SIGINT', () => {});
  for (const signal of ['SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  child.once('error', (error) => {
    console.error(`${program} does not start: ${error.message}`);
    process.exitCode = 1;
  });
  child.once('exit', (code) => {
    process.exitCode = code ?? 1;
    process.exit();
  });
}
