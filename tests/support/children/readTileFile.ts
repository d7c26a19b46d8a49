// Opens a tile file as the host does and says its own process id before it does.
import { join } from 'node:path';
import { TileFiles } from '../../../electron/host/tileFiles.ts';

const [home, path] = process.argv.slice(2);
const files = new TileFiles(join(home!, 'map-files.json'), { openMs: 3000, tileMs: 3000 });
console.log(process.pid);
await files.open(path!, true, null);
