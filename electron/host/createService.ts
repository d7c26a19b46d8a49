import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createPrintRoom } from '../print/printRoom.ts';
import { ProjectService } from './projectService.ts';
import { userFolders } from './userFolders.ts';

/** The project's top folder, both from the source and from the built `dist/electron`. */
export const topFolder = join(import.meta.dirname, '..', '..');

/** The built page. */
export const pageFolder = join(topFolder, 'dist', 'renderer');

/** The service as the app itself runs it: the user's folders, the demo that comes with the app, the real printer. */
export function createService(): ProjectService {
  const { version } = JSON.parse(readFileSync(join(topFolder, 'package.json'), 'utf8')) as { version: string };
  return new ProjectService({
    folders: userFolders(),
    demoFile: join(topFolder, 'assets', 'demo', 'demo-property.json'),
    print: createPrintRoom(),
    madeWith: `Undergate ${version}`,
  });
}
