// Prints, as JSON, the problem that opening (or making, or getting ready to replace) the project file named by the arguments
// runs into, or null.

import { newProperty } from '../../../core/model/defaults.ts';
import { assertNotInUse } from '../../../electron/store/openDatabase.ts';
import { problemOf } from '../../../electron/store/problems.ts';
import { createProjectFile, openProjectFile } from '../../../electron/store/projectFile.ts';

const [, , work, path] = process.argv as [string, string, 'open' | 'create' | 'replace', string];
try {
  if (work === 'create') createProjectFile(path, [newProperty('New')], 'Undergate test');
  else if (work === 'replace') assertNotInUse(path);
  else openProjectFile(path).store.close();
  console.log('null');
} catch (error) {
  console.log(JSON.stringify(problemOf(error, path)));
}
