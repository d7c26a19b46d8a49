// Opens the project file named by the first argument, says so, and keeps it open until it is killed.
import { openProjectFile } from '../../../electron/store/projectFile.ts';

const { store } = openProjectFile(process.argv[2]!);
console.log('open');
// A store that nothing holds any more may be cleared away, and its lock with it.
setInterval(() => store.state(), 1000);
