import type { LineEnd } from '../model/things.ts';

const eighths = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'] as const;

export type CompassWord = (typeof eighths)[number];

/** The nearest of eight directions to a bearing in degrees: "north-east". */
export function compassWord(bearingDeg: number): CompassWord {
  return eighths[((Math.round(bearingDeg / 45) % 8) + 8) % 8]!;
}

interface Opening {
  /** From the start post to the end post. */
  readonly bearingDeg: number;
}

/** On which side of its opening a gate post stands, for nobody can see which one is the start. */
export function postSide({ bearingDeg }: Opening, post: LineEnd): CompassWord {
  return compassWord(post === 'start' ? bearingDeg + 180 : bearingDeg);
}

/** Which way is left, or right (below 0), of the line from the start post to the end post. */
export function sideOfOpening({ bearingDeg }: Opening, leftM: number): CompassWord {
  return compassWord(leftM < 0 ? bearingDeg + 90 : bearingDeg - 90);
}
