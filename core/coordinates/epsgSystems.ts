import { type Message, message } from '../words/message.ts';

/**
 * Coordinate systems by the codes of the EPSG Geodetic Parameter Dataset (version 10.076), as far as they can be worked out
 * by formula alone. Their datums are taken as WGS 84; how far they lie from it stands in their name. Those distances are
 * what the motion of the plates and the differences of the datums come to by now: common practice, no source.
 */

export interface EpsgSystem {
  readonly name: Message;
  /** PROJ text. */
  readonly definition: string;
}

type Family = readonly [
  first: number,
  last: number,
  firstZone: number,
  half: 'north' | 'south',
  datum: string,
  offM: number,
];

/** Runs of codes for UTM zones one after the other, on the ellipsoid GRS 80. */
const utmFamilies: readonly Family[] = [
  [26901, 26923, 1, 'north', 'NAD83', 2],
  [2955, 2957, 11, 'north', 'NAD83(CSRS)', 2],
  [2958, 2962, 17, 'north', 'NAD83(CSRS)', 2],
  [3154, 3157, 7, 'north', 'NAD83(CSRS)', 2],
  [3158, 3160, 14, 'north', 'NAD83(CSRS)', 2],
  [3761, 3761, 22, 'north', 'NAD83(CSRS)', 2],
  [3708, 3726, 1, 'north', 'NAD83(NSRS2007)', 2],
  [3740, 3749, 10, 'north', 'NAD83(HARN)', 2],
  [6328, 6329, 59, 'north', 'NAD83(2011)', 2],
  [6330, 6348, 1, 'north', 'NAD83(2011)', 2],
  [28348, 28358, 48, 'south', 'MGA94', 2],
  [31965, 31976, 11, 'north', 'SIRGAS 2000', 1],
  [31977, 31985, 17, 'south', 'SIRGAS 2000', 1],
  [2133, 2135, 58, 'south', 'NZGD2000', 1],
  [6366, 6371, 11, 'north', 'Mexico ITRF2008', 1],
];

const degrees = '+proj=longlat +ellps=GRS80 +no_defs';
const onGrs80 = '+ellps=GRS80 +units=m +no_defs';
const conus = `+proj=aea +lat_0=23 +lon_0=-96 +lat_1=29.5 +lat_2=45.5 +x_0=0 +y_0=0 ${onGrs80}`;
const irish =
  '+proj=tmerc +lat_0=53.5 +lon_0=-8 +k=1.000035 +x_0=200000 +y_0=250000 +a=6377340.189 +rf=299.3249646 +towgs84=482.5,-130.6,564.6,-1.042,-0.214,-0.631,8.15 +units=m +no_defs';

const single: Readonly<Record<number, readonly [name: Message, definition: string, offM: number]>> = {
  4269: [named('NAD83'), degrees, 2],
  4617: [named('NAD83(CSRS)'), degrees, 2],
  4759: [named('NAD83(NSRS2007)'), degrees, 2],
  4152: [named('NAD83(HARN)'), degrees, 2],
  6318: [named('NAD83(2011)'), degrees, 2],
  4283: [named('GDA94'), degrees, 2],
  4674: [named('SIRGAS 2000'), degrees, 1],
  4171: [named('RGF93'), degrees, 1],
  4148: [named('Hartebeesthoek94'), degrees, 1],
  4979: [message('coordinates.systems.wgs84WithHeights'), '+proj=longlat +datum=WGS84 +no_defs', 0],
  5070: [message('coordinates.systems.albersOf48', { datum: 'NAD83' }), conus, 2],
  6350: [message('coordinates.systems.albersOf48', { datum: 'NAD83(2011)' }), conus, 2],
  3979: [
    message('coordinates.systems.lambertOfCanada', { datum: 'NAD83(CSRS)' }),
    `+proj=lcc +lat_0=49 +lon_0=-95 +lat_1=49 +lat_2=77 +x_0=0 +y_0=0 ${onGrs80}`,
    2,
  ],
  3577: [
    message('coordinates.systems.albersOfAustralia', { datum: 'GDA94' }),
    `+proj=aea +lat_0=0 +lon_0=132 +lat_1=-18 +lat_2=-36 +x_0=0 +y_0=0 ${onGrs80}`,
    2,
  ],
  3112: [
    message('coordinates.systems.lambertOfAustralia', { datum: 'GDA94' }),
    `+proj=lcc +lat_0=0 +lon_0=134 +lat_1=-18 +lat_2=-36 +x_0=0 +y_0=0 ${onGrs80}`,
    2,
  ],
  3035: [
    message('coordinates.systems.laeaOfEurope', { datum: 'ETRS89' }),
    `+proj=laea +lat_0=52 +lon_0=10 +x_0=4321000 +y_0=3210000 ${onGrs80}`,
    1,
  ],
  2154: [
    named('RGF93, Lambert-93'),
    `+proj=lcc +lat_0=46.5 +lon_0=3 +lat_1=49 +lat_2=44 +x_0=700000 +y_0=6600000 ${onGrs80}`,
    1,
  ],
  // Shifts of seven parameters: EPSG's transformations 1314 and 1641.
  27700: [
    message('coordinates.systems.britishGrid'),
    '+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=airy +towgs84=446.448,-125.157,542.06,0.15,0.247,0.842,-20.489 +units=m +no_defs',
    5,
  ],
  29902: [message('coordinates.systems.irishGrid', { datum: 'TM65' }), irish, 2],
  29903: [message('coordinates.systems.irishGrid', { datum: 'TM75' }), irish, 2],
};

/** A system of this code, or null where it can't be worked out here. */
export function epsgSystem(code: number): EpsgSystem | null {
  const family = utmFamilies.find(([first, last]) => code >= first && code <= last);
  if (family) {
    const [first, , firstZone, half, datum, offM] = family;
    const zone = firstZone + code - first;
    const south = half === 'south';
    const called =
      datum === 'MGA94'
        ? message('coordinates.systems.mga94', { zone })
        : message('coordinates.systems.zoneOn', { datum, zone, south });
    return {
      name: withOffset(called, offM),
      definition: `+proj=utm +zone=${zone}${south ? ' +south' : ''} ${onGrs80}`,
    };
  }
  // RGF93, CC42 to CC50: a cone for every degree of latitude.
  if (code >= 3942 && code <= 3950) {
    const lat = code - 3900;
    const north = 1_200_000 + (lat - 42) * 1_000_000;
    const cone = `+lat_0=${lat} +lon_0=3 +lat_1=${lat - 0.75} +lat_2=${lat + 0.75} +x_0=1700000 +y_0=${north}`;
    return { name: withOffset(named(`RGF93, CC${lat}`), 1), definition: `+proj=lcc ${cone} ${onGrs80}` };
  }
  const found = single[code];
  return found ? { name: withOffset(found[0], found[2]), definition: found[1] } : null;
}

function withOffset(system: Message, offM: number): Message {
  return offM === 0 ? system : message('coordinates.systems.within', { system, offM });
}

/** A system by its name alone, which is the same in every language. */
export function named(name: string): Message {
  return message('coordinates.systems.named', { name });
}
