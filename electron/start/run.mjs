// Runs one of the project's TypeScript programs: node electron/start/run.mjs electron/start/start.ts --demo
// Plain JavaScript, so that an older Node can still read it and say what is missing.
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const needed = 24;

if (Number(process.versions.node.split('.')[0]) < needed) {
  console.error(
    `Undergate needs Node ${needed}, this is ${process.versions.node}: run "npm ci" first, then start it through npm (npm start, npm test), which uses the Node that npm ci brought along.`,
  );
  process.exit(1);
}

const [, , program, ...args] = process.argv;
process.argv = [process.argv[0], resolve(program), ...args];
await import(pathToFileURL(resolve(program)).href);
