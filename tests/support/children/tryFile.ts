// Prints, as JSON, the problem that opening (or making) the project file named by the arguments runs into, or null.

import { newProperty } from '../../../core/model/defaults.ts';
import { problemOf } from '../../../electron/store/problems.ts';
import { createProjectFile, openProjectFile } from '../../../electron/store/projectFile.ts';

const [, , work, path] = process.argv as [string, string, 'open' | 'create', string];
try {
  if (work === 'create') createProjectFile(path, [newProperty('New')], 'Undergate test');
  else openProjectFile(path).store.close();
  console.log('null');
} catch (error) {
  console.log(JSON.stringify(problemOf(error, path)));
}
