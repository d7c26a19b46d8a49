import type { LonLat } from '../geometry/types.ts';
import { type Message, message } from '../words/message.ts';

export interface UtmZone {
  /** 1 to 60. */
  readonly zone: number;
  readonly south: boolean;
}

/**
 * The zone of the Universal Transverse Mercator grid that a place is in, with its two exceptions: south-west Norway
 * and Svalbard (NGA.SIG.0012, "The Universal Grids", 2014).
 */
export function utmZoneAt([lon, lat]: LonLat): UtmZone {
  const turned = ((((lon + 180) % 360) + 360) % 360) - 180;
  return { zone: exceptionAt(turned, lat) ?? Math.min(60, Math.floor((turned + 180) / 6) + 1), south: lat < 0 };
}

function exceptionAt(lon: number, lat: number): number | null {
  if (lat >= 56 && lat < 64 && lon >= 3 && lon < 12) return 32;
  if (lat < 72 || lat > 84 || lon < 0 || lon >= 42) return null;
  return lon < 9 ? 31 : lon < 21 ? 33 : lon < 33 ? 35 : 37;
}

export function utmDefinition({ zone, south }: UtmZone): string {
  return `+proj=utm +zone=${zone}${south ? ' +south' : ''} +datum=WGS84 +units=m +no_defs`;
}

export function utmName({ zone, south }: UtmZone): Message {
  return message('coordinates.systems.zone', { zone, south });
}

/** "37S", "UTM 14 north": the zone and the half of the earth, which is not the letter of a latitude band. */
export function readUtmZone(text: string): UtmZone | null {
  const found = /^(?:utm\s*)?(?:zone\s*)?(\d{1,2})\s*(s|n|south|north)$/i.exec(text.trim());
  const zone = Number(found?.[1]);
  if (!found || zone < 1 || zone > 60) return null;
  return { zone, south: /^s/i.test(found[2]!) };
}
