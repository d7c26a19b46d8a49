// Makes new project files in the folder named by the first argument until it is killed, and acknowledges each path.
import { writeSync } from 'node:fs';
import { join } from 'node:path';
import { newProperty } from '../../../core/model/defaults.ts';
import { createProjectFile } from '../../../electron/store/projectFile.ts';

const [, , folder, stem] = process.argv as [string, string, string, string];
for (let n = 0; ; n++) {
  const path = join(folder, `${stem}-${n}.undergate`);
  createProjectFile(path, [newProperty(`Property ${n}`)], 'Undergate test');
  writeSync(1, `${path}\n`);
}
