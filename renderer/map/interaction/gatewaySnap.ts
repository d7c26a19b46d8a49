import type { LineEnd } from '../../../core/model/things.ts';
import { type Message, message } from '../../../core/words/message.ts';

/** Something along a line that a gate hangs from or shuts against. */
export interface Landmark {
  readonly atM: number;
  readonly spot: Message;
}

/** A place along a line where a gateway sits well. */
export interface GatewayStation {
  /** Of the centre of the opening. */
  readonly atM: number;
  /** "beside post P4", "halfway from post P4 to the end of F2"; null: simply where the pointer is. */
  readonly spot: Message | null;
  /** The post that stands at the landmark: the gate hangs from it. */
  readonly hungFrom: LineEnd;
}

export interface Opening {
  readonly fromM: number;
  readonly toM: number;
}

/**
 * Where a gateway of this width sits well: with a post at a landmark, to either side of it, or halfway between two
 * neighbouring landmarks; within the line and clear of its other openings. The landmarks come in order, the line's two
 * ends among them.
 */
export function gatewayStations(
  landmarks: readonly Landmark[],
  openings: readonly Opening[],
  widthM: number,
  lengthM: number,
): GatewayStation[] {
  const half = widthM / 2;
  const stations: GatewayStation[] = [];
  for (const [i, { atM, spot }] of landmarks.entries()) {
    const beside = message('window.map.spots.beside', { spot });
    stations.push({ atM: atM - half, spot: beside, hungFrom: 'end' });
    stations.push({ atM: atM + half, spot: beside, hungFrom: 'start' });
    const next = landmarks[i + 1];
    if (next) {
      const middleM = (atM + next.atM) / 2;
      const halfway = message('window.map.spots.halfway', { from: spot, to: next.spot });
      stations.push({ atM: middleM, spot: halfway, hungFrom: 'start' });
    }
  }
  const slackM = 1e-6;
  return stations.filter(
    ({ atM }) =>
      atM >= half - slackM &&
      atM <= lengthM - half + slackM &&
      openings.every(({ fromM, toM }) => atM + half <= fromM + slackM || atM - half >= toM - slackM),
  );
}

/** The station nearest to where the pointer is, within reach; else the pointer's own place, kept on the line. */
export function snapGateway(
  atM: number,
  stations: readonly GatewayStation[],
  reachM: number,
  widthM: number,
  lengthM: number,
): GatewayStation {
  let best: GatewayStation | null = null;
  for (const station of stations) {
    const off = Math.abs(station.atM - atM);
    if (off <= reachM && (!best || off < Math.abs(best.atM - atM))) best = station;
  }
  if (best) return best;
  const half = Math.min(widthM, lengthM) / 2;
  return { atM: Math.min(lengthM - half, Math.max(half, atM)), spot: null, hungFrom: 'start' };
}
