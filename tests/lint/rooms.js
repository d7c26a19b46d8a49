/**
 * The rooms of the project and what each may import. The longest path that fits decides which room a file is in; a
 * file may always import from its own room.
 */

const shapes = ['core/model', 'core/geometry', 'core/shapes'];
const drawing = [...shapes, 'core/network'];
const computed = [...drawing, 'core/electrical', 'core/survey'];

/**
 * rooms: whose files it may import. types: whose types only. packages: which packages, `node:` standing for all of
 * Node's own modules. Rooms that are not listed may import everything.
 */
export const rooms = {
  'core/words': {},
  'core/kinds': {},
  'core/model': {},
  'core/model/edits': { rooms: shapes },
  'core/geometry': {
    rooms: ['core/model'],
    packages: ['@turf/turf', 'geographiclib-geodesic', 'flatbush'],
  },
  'core/coordinates': { rooms: ['core/model', 'core/geometry'], packages: ['proj4'] },
  'core/shapes': { rooms: shapes, packages: ['flatbush'] },
  'core/network': { rooms: drawing, packages: ['flatbush'] },
  'core/electrical': { rooms: ['core/model', 'core/network'] },
  'core/survey': { rooms: [...drawing, 'core/model/edits', 'core/electrical'], packages: ['flatbush'] },
  'core/locate': { rooms: [...computed, 'core/model/edits'], packages: ['flatbush'] },
  'core/record': { rooms: [...computed, 'core/model/edits', 'core/locate'] },
  'core/checks': { rooms: [...computed, 'core/model/edits', 'core/locate'], packages: ['flatbush'] },
  'core/quantities': { rooms: [...computed, 'core/model/edits', 'core/checks'] },
  'core/exchange': {
    rooms: [
      ...computed,
      'core/api',
      'core/model/edits',
      'core/coordinates',
      'core/locate',
      'core/quantities',
      'core/drawing',
    ],
    packages: ['papaparse', 'geojson', 'fflate', 'saxes', '@tarikjabiri/dxf'],
  },
  'core/exchange/phone': { rooms: [...computed, 'core/locate', 'core/drawing', 'core/sheets'] },
  'core/drawing': { rooms: [...computed, 'core/locate', 'core/record'], packages: ['flatbush'] },
  'core/sheets': {
    rooms: [...computed, 'core/quantities', 'core/locate', 'core/record', 'core/drawing'],
    types: ['core/api'],
    packages: ['flatbush'],
  },
  'core/api': { rooms: ['core/model'], packages: ['zod'] },
  'electron/store': { rooms: ['core'], packages: ['node:', 'better-sqlite3', 'zod'] },
  'electron/print': { rooms: ['core'], packages: ['node:', 'pdfkit', 'fontkit', 'qrcode-generator', 'comlink'] },
  'electron/host': { rooms: ['core', 'electron/store', 'electron/print'], packages: ['node:', 'zod'] },
  'electron/loopback': { rooms: ['core/api', 'electron/host'], packages: ['node:'] },
  'electron/main': {
    rooms: ['core/api', 'electron/host', 'electron/store'],
    packages: ['node:', 'electron'],
  },
  'electron/preload': { rooms: ['core/api'], packages: ['electron'] },
  renderer: { rooms: ['core'], packages: ['react', 'react-dom', 'zustand', '@fontsource/', 'geotiff', 'comlink'] },
  'renderer/client': { rooms: ['core/api'] },
  'renderer/styles': { rooms: ['core/drawing'], packages: ['@fontsource/', 'leaflet'] },
  'renderer/map': { rooms: ['core', 'renderer/styles'], packages: ['react', 'react-dom', 'leaflet', 'flatbush'] },
};

/** What a room may not import from a file, though it may import the file. */
const withheld = [
  {
    from: 'renderer',
    path: 'core/model/project.ts',
    names: ['put', 'putAll', 'remove', 'removeAll'],
    why: 'the window changes a property by the edits in core only, with their refusals and all that hangs on a thing',
  },
  ...['core', 'renderer'].map((from) => ({
    from,
    except: 'core/geometry',
    path: 'core/geometry/geodesic.ts',
    names: ['distanceM', 'segmentLengthsM', 'pathLengthM', 'bearingDeg', 'destination', 'ringAreaM2', 'ringPerimeterM'],
    why: 'the measures of a property are those of its plane (plane.earth), or earthAt()',
  })),
];

/** Why a file in `room` may not import `names` from this file, or null. `*` stands for all that it exports. */
export function whyNotNames(room, path, names) {
  const isIn = (from) => room === from || room.startsWith(`${from}/`);
  const rule = withheld.find(
    ({ from, except, path: file }) => path === file && isIn(from) && !(except && isIn(except)),
  );
  const taken = names.filter((name) => name === '*' || rule?.names.includes(name));
  if (!rule || taken.length === 0) return null;
  return `${room} may not import ${taken.join(', ')} from ${path}: ${rule.why} (tests/lint/rooms.js).`;
}

/** The room that a path, from the project's top folder, lies in. */
export function roomOf(path) {
  const names = Object.keys(rooms).filter((name) => path.startsWith(`${name}/`));
  return names.sort((a, b) => b.length - a.length)[0];
}

/** Why a file in `room` may not import this, or null. `target` is a path from the top folder, or a package. */
export function whyNot(room, target, isPackage, isTypeOnly) {
  const rule = rooms[room];
  return isPackage ? whyNotPackage(room, rule, target) : whyNotFile(room, rule, target, isTypeOnly);
}

function whyNotPackage(room, { packages = [] }, name) {
  const fits = (allowed) => (/[:/]$/.test(allowed) ? name.startsWith(allowed) : isPackageOrPart(name, allowed));
  if (packages.some(fits)) return null;
  return `${room} may not import ${name}: its packages are ${packages.join(', ') || 'none'} (tests/lint/rooms.js).`;
}

function isPackageOrPart(name, allowed) {
  return name === allowed || name.startsWith(`${allowed}/`);
}

function whyNotFile(room, rule, path, isTypeOnly) {
  const targetRoom = roomOf(path) ?? path;
  // A room without a row of its own (core, renderer) opens with all rooms inside it.
  const isIn = (names = []) =>
    names.some((name) => targetRoom === name || (!(name in rooms) && path.startsWith(`${name}/`)));
  if (targetRoom === room || isForAll(room, targetRoom) || isIn(rule.rooms) || sharesWindow(room, targetRoom)) {
    return null;
  }
  if (isIn(rule.types)) {
    return isTypeOnly ? null : `${room} may import types only from ${targetRoom} (tests/lint/rooms.js).`;
  }
  const allowed = [...(rule.rooms ?? []), ...(rule.types ?? []).map((name) => `${name} (types)`)].join(', ');
  return `${room} may not import ${path}: besides its own files, it may import ${allowed || 'nothing'} (tests/lint/rooms.js).`;
}

/** Words and numbers are below everything, and the descriptions of the kinds rest on nothing but them. */
function isForAll(room, targetRoom) {
  return (
    (targetRoom === 'core/words' && room !== 'core/words') || (targetRoom === 'core/kinds' && room !== 'core/words')
  );
}

/** The window's own rooms are one, but for client and map, which know nothing of the rest. */
function sharesWindow(room, targetRoom) {
  return room === 'renderer' && targetRoom.startsWith('renderer');
}
