import type { Figures } from '../../types.ts';

type End = 'start' | 'end';

/** A place on the fence, for someone who walks there. */
export type Spot =
  | { readonly on: 'energiser' }
  | { readonly on: 'switch'; readonly name: string }
  | { readonly on: 'gatePost'; readonly end: End; readonly gateway: string }
  | { readonly on: 'lineEnd'; readonly end: End; readonly line: string }
  | { readonly on: 'line'; readonly line: string }
  /** So far from the line's start; null where the line is gone. */
  | { readonly on: 'along'; readonly line: string | null; readonly atM: number };

const gatePosts = { start: 'start post', end: 'end post' };
const lineEnds = { start: 'start', end: 'end' };

/** "start post of G4", "S7", "end of F12", "F12, 340 m from its start". */
export function bareSpot(spot: Spot, f: Figures): string {
  switch (spot.on) {
    case 'energiser':
      return 'the energiser';
    case 'switch':
      return spot.name;
    case 'gatePost':
      return `${gatePosts[spot.end]} of ${spot.gateway}`;
    case 'lineEnd':
      return `${lineEnds[spot.end]} of ${spot.line}`;
    case 'line':
      return spot.line;
    case 'along':
      return `${spot.line ?? 'a fence'}, ${f.length(spot.atM)} from its start`;
  }
}

/** "the start post of G4", "S7", "F12, 340 m from its start". */
export function theSpot(spot: Spot, f: Figures): string {
  const bare = bareSpot(spot, f);
  return spot.on === 'gatePost' || spot.on === 'lineEnd' ? `the ${bare}` : bare;
}

/** "at the end of F12", "on F12, 340 m from its start", "at S7". */
export function atSpot(spot: Spot, f: Figures): string {
  return spot.on === 'along' ? `on ${bareSpot(spot, f)}` : `at ${theSpot(spot, f)}`;
}
