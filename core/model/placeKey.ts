import type { Kind, LineEnd } from './things.ts';

/**
 * A place where a switch could go, by what it stands on. The user's word on a place (`SwitchRule`) is kept under the
 * key's text, so a key names things by their ids only and stays the same as long as they do.
 */
export type PlaceKey =
  /** The supply side of its crossing. */
  | { readonly on: 'gateway'; readonly gatewayId: string }
  /** The end of a line where three ways meet. */
  | { readonly on: 'takeOff'; readonly lineId: string; readonly end: LineEnd }
  /** A strainer post on a line. */
  | { readonly on: 'strainerPost'; readonly postId: string; readonly lineId: string }
  /** A strained corner of a line, by its vertex. */
  | { readonly on: 'corner'; readonly lineId: string; readonly vertex: number }
  /** A place that the user added (`SwitchCandidatePlace`). */
  | { readonly on: 'added'; readonly candidateId: string }
  /** A switch that is drawn where nothing else suggests one. */
  | { readonly on: 'switch'; readonly switchId: string };

/** The key as it is kept: `gateway:ID`, `takeOff:LINE:start`, `strainer:POST:LINE`, `strainer:LINE:VERTEX`, `place:ID`, `switch:ID`. */
export function placeKeyText(key: PlaceKey): string {
  switch (key.on) {
    case 'gateway':
      return `gateway:${written(key.gatewayId)}`;
    case 'takeOff':
      return `takeOff:${written(key.lineId)}:${key.end}`;
    case 'strainerPost':
      return `strainer:${written(key.postId)}:${notANumber(written(key.lineId))}`;
    case 'corner':
      return `strainer:${written(key.lineId)}:${key.vertex}`;
    case 'added':
      return `place:${written(key.candidateId)}`;
    case 'switch':
      return `switch:${written(key.switchId)}`;
  }
}

/** The key that a text was made of; null where it is none. */
export function parsePlaceKey(text: string): PlaceKey | null {
  const [on, first = '', second, ...more] = text.split(':');
  if (first === '' || more.length > 0) return null;
  const id = read(first);
  if (second === undefined) {
    if (on === 'gateway') return { on, gatewayId: id };
    if (on === 'place') return { on: 'added', candidateId: id };
    return on === 'switch' ? { on, switchId: id } : null;
  }
  if (on === 'takeOff') return second === 'start' || second === 'end' ? { on, lineId: id, end: second } : null;
  if (on !== 'strainer' || second === '') return null;
  if (/^\d+$/.test(second)) return { on: 'corner', lineId: id, vertex: Number(second) };
  return { on: 'strainerPost', postId: id, lineId: read(second) };
}

/** The things without which there is no such place. */
export function thingsOfPlaceKey(key: PlaceKey): readonly { readonly kind: Kind; readonly id: string }[] {
  switch (key.on) {
    case 'gateway':
      return [{ kind: 'gateway', id: key.gatewayId }];
    case 'takeOff':
    case 'corner':
      return [{ kind: 'fenceLine', id: key.lineId }];
    case 'strainerPost':
      return [
        { kind: 'post', id: key.postId },
        { kind: 'fenceLine', id: key.lineId },
      ];
    case 'added':
      return [{ kind: 'switchCandidate', id: key.candidateId }];
    case 'switch':
      return [{ kind: 'switch', id: key.switchId }];
  }
}

/** Ids of this program have neither of these signs; ids from elsewhere may. */
function written(id: string): string {
  return id.replace(/[%:]/g, percent);
}

/** A line whose id is a number must not look like a vertex. */
function notANumber(id: string): string {
  return /^\d+$/.test(id) ? `${percent(id[0]!)}${id.slice(1)}` : id;
}

function percent(sign: string): string {
  return `%${sign.charCodeAt(0).toString(16).toUpperCase()}`;
}

function read(id: string): string {
  return id.replace(/%([0-9A-F]{2})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}
