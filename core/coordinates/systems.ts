import type { CoordinateSettings } from '../model/underlayThings.ts';
import { type Message, message } from '../words/message.ts';
import { epsgSystem, named } from './epsgSystems.ts';
import { utmDefinition, utmName } from './utm.ts';

/** How places are written. */
export type CoordinateSystem =
  | { readonly kind: 'degrees'; readonly id: string; readonly name: Message; readonly style: 'decimal' | 'minutes' }
  /** The zone follows the place. */
  | { readonly kind: 'utm'; readonly id: string; readonly name: Message }
  | { readonly kind: 'projected'; readonly id: string; readonly name: Message; readonly definition: string };

export const decimalDegrees: CoordinateSystem = {
  kind: 'degrees',
  id: 'degrees',
  name: message('coordinates.systems.degrees'),
  style: 'decimal',
};

/**
 * The systems that need no definition of the user's. Definitions as the EPSG Geodetic Parameter Dataset gives them (codes in
 * the ids); the GRS 80 and WGS 84 ellipsoids differ by a tenth of a millimetre.
 */
export const knownSystems: readonly CoordinateSystem[] = [
  decimalDegrees,
  {
    kind: 'degrees',
    id: 'degreesMinutes',
    name: message('coordinates.systems.degreesMinutes'),
    style: 'minutes',
  },
  { kind: 'utm', id: 'utm', name: message('coordinates.systems.utm') },
  {
    kind: 'projected',
    id: 'EPSG:2193',
    name: named('NZTM2000'),
    definition: '+proj=tmerc +lat_0=0 +lon_0=173 +k=0.9996 +x_0=1600000 +y_0=10000000 +ellps=GRS80 +units=m +no_defs',
  },
  ...Array.from(
    { length: 8 },
    (_, index): CoordinateSystem => ({
      kind: 'projected',
      id: `EPSG:${7849 + index}`,
      name: message('coordinates.systems.mga2020', { zone: 49 + index }),
      definition: `+proj=utm +zone=${49 + index} +south +ellps=GRS80 +units=m +no_defs`,
    }),
  ),
  {
    kind: 'projected',
    id: 'EPSG:2157',
    name: message('coordinates.systems.irish'),
    definition: '+proj=tmerc +lat_0=53.5 +lon_0=-8 +k=0.99982 +x_0=600000 +y_0=750000 +ellps=GRS80 +units=m +no_defs',
  },
];

/** Id of the system whose definition the user gave. */
export const ownSystemId = 'own';

/** The system that a property's coordinates are shown and typed in. */
export function systemOf(settings: CoordinateSettings | undefined): CoordinateSystem {
  if (!settings) return decimalDegrees;
  if (settings.system === ownSystemId && settings.own) {
    const { name, definition } = settings.own;
    return { kind: 'projected', id: ownSystemId, name: named(name), definition };
  }
  return knownSystems.find(({ id }) => id === settings.system) ?? decimalDegrees;
}

/** What an EPSG code stands for, where that can be told without the EPSG's own list; else null. */
export function systemOfEpsg(code: number): { readonly name: Message; readonly definition: string } | null {
  const known = knownSystems.find(({ id }) => id === `EPSG:${code}`);
  if (known?.kind === 'projected') return known;
  const utm = code > 32600 && code <= 32660 ? false : code > 32700 && code <= 32760 ? true : null;
  if (utm !== null) {
    const zone = { zone: code % 100, south: utm };
    return { name: utmName(zone), definition: utmDefinition(zone) };
  }
  // UTM on ETRS89, zones 28 to 38.
  if (code >= 25828 && code <= 25838) {
    const zone = code - 25800;
    const name = message('coordinates.systems.zoneOn', { datum: 'ETRS89', zone, south: false });
    return { name, definition: `+proj=utm +zone=${zone} +ellps=GRS80 +units=m +no_defs` };
  }
  return others[code] ?? epsgSystem(code);
}

const others: Readonly<Record<number, { readonly name: Message; readonly definition: string }>> = {
  4326: { name: named('WGS 84'), definition: '+proj=longlat +datum=WGS84 +no_defs' },
  4167: { name: named('NZGD2000'), definition: '+proj=longlat +ellps=GRS80 +no_defs' },
  7844: { name: named('GDA2020'), definition: '+proj=longlat +ellps=GRS80 +no_defs' },
  4258: { name: named('ETRS89'), definition: '+proj=longlat +ellps=GRS80 +no_defs' },
  4173: { name: named('IRENET95'), definition: '+proj=longlat +ellps=GRS80 +no_defs' },
  3857: {
    name: message('coordinates.systems.webMercator'),
    definition:
      '+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m +nadgrids=@null +no_defs',
  },
};
