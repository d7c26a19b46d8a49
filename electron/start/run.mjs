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
  await import(pathToFileURL(resolve(program)).href).catch(refuseWithoutPackages);
}

/** Says what to do where a package is not there: without "npm ci" none is, and npm leaves out some where it is told to. */
function refuseWithoutPackages(error) {
  const missing = error.code === 'ERR_MODULE_NOT_FOUND' && /Cannot find package '([^']+)'/.exec(error.message)?.[1];
  if (!missing) throw error;
  console.error(
    `Undergate's package ${missing} is not in node_modules. Run "npm ci", and see that npm is not told to omit packages (NODE_ENV=production does that).`,
  );
  process.exit(1);
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
