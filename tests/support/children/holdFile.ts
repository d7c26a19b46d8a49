// Opens the project file named by the first argument, says so, and keeps it open until it is killed.
import { openProjectFile } from '../../../electron/store/projectFile.ts';

openProjectFile(process.argv[2]!);
console.log('open');
setInterval(() => {}, 1000);
