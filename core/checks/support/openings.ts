import type { GatewayShape } from '../../shapes/types.ts';
import type { Survey } from '../../survey/types.ts';

/** The gateways of each line, in order along it. */
export type Openings = ReadonlyMap<string, readonly GatewayShape[]>;

export function openingsOf(survey: Survey): Openings {
  const openings = new Map<string, GatewayShape[]>();
  for (const shape of survey.gateways.values()) {
    const onLine = openings.get(shape.gateway.lineId);
    if (onLine) onLine.push(shape);
    else openings.set(shape.gateway.lineId, [shape]);
  }
  for (const onLine of openings.values()) onLine.sort((a, b) => a.fromM - b.fromM);
  return openings;
}

/** The gateway whose opening holds a station of a line, given some slack at its posts. */
export function openingAt(openings: Openings, lineId: string, atM: number, slackM = 0): GatewayShape | null {
  const onLine = openings.get(lineId) ?? [];
  return onLine.find(({ fromM, toM }) => atM >= fromM - slackM && atM <= toM + slackM) ?? null;
}
