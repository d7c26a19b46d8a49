// Builds the page and the desktop app into dist; with --if-needed only when something has changed.
import { buildAll, buildIfNeeded } from './buildApp.ts';

await (process.argv.includes('--if-needed') ? buildIfNeeded() : buildAll());
